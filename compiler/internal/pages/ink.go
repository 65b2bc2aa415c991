package pages

// Ink is a colour as 0xRRGGBB with InkOn set; the zero Ink leaves no mark.
type Ink uint32

// InkOn tells black from no ink at all.
const InkOn Ink = 1 << 24

// RGB gives the parts of the colour, 0 to 255.
func (ink Ink) RGB() (r, g, b int) {
	return int(ink >> 16 & 0xFF), int(ink >> 8 & 0xFF), int(ink & 0xFF)
}

// On says whether the ink leaves a mark.
func (ink Ink) On() bool { return ink&InkOn != 0 }

const (
	white = InkOn | 0xFFFFFF
	black = InkOn | 0x0B0D0E
	slate = InkOn | 0x1F2F3A // bands
	grey  = InkOn | 0x39434A // second words; dark enough for a copy in black and white at a cut of 30 %
	rule  = InkOn | 0xB9C1C7 // hairlines
	tint  = InkOn | 0xEDF0F2 // quiet grounds

	// Safety colours of ISO 3864-4 by their RAL numbers: 3001, 2010, 1003, 5005, 6032.
	red    = InkOn | 0x9B2423
	orange = InkOn | 0xD05D29
	yellow = InkOn | 0xF9A800
	blue   = InkOn | 0x005387
	green  = InkOn | 0x237F52
)

// signal is how a level of a safety message looks (ANSI Z535.4, ISO 3864-2).
type signal struct {
	ground, word Ink
	contour      Ink  // round the word, where a copy may make word and ground one
	alert        bool // the alert triangle: for injury only, never on a notice
	italic       bool
	frame        float64
}

// signalOf never makes a message look milder than it may be: an unknown level is drawn as danger.
func signalOf(key string) signal {
	switch key {
	case "warning":
		return signal{ground: orange, word: black, contour: white, alert: true, frame: 0.5}
	case "caution":
		return signal{ground: yellow, word: black, alert: true, frame: 0.35}
	case "notice":
		return signal{ground: blue, word: white, italic: true, frame: 0.35}
	}
	return signal{ground: red, word: white, alert: true, frame: 0.7}
}
