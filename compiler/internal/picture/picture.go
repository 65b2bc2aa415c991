// Package picture reads the pictures of a shop and makes them as large as a page takes
// them. It must not know where they stand.
package picture

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"

	"github.com/bep/imagemeta"
)

// What is read at most: 50 megapixels are what telephones take at their finest, and what is
// decoded of them stays under 600 MB. A side that is longer is no photograph, and takes longest of all
// to make smaller.
const (
	MostBytes  = 32 << 20
	mostPixels = 52_000_000
	mostSide   = 20_000
	keptPixels = 2400 // of the longer side: 200 mm at 300 to the inch
)

// Fault is why there is no picture, in words that go on from its name, with the name of one beside
// it that may be meant.
type Fault struct{ Says, Near string }

func (f *Fault) Error() string { return f.Says }

// Picture is a picture of a shop, upright and on white.
type Picture struct {
	Width, Height int // pixels, as they came, upright
	photo         bool
	size          image.Point // of the pixels that are kept
	pixels        *image.RGBA // nil where they are made anew each time
	data          []byte      // as it came, where the pixels are made anew
	whole         []byte      // the same, where a page can take it so
	digest        [sha256.Size]byte
}

// Digest is the digest of what was read.
func (p *Picture) Digest() [sha256.Size]byte { return p.digest }

// Read decodes a PNG or a JPEG and turns it upright by what its camera wrote (Exif 2.32,
// tag 0x0112). The error says what is wrong with the picture, in words that go on from its
// name.
func Read(data []byte) (*Picture, error) {
	config, format, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case errors.Is(err, image.ErrFormat):
		return nil, errors.New("is neither PNG nor JPEG inside")
	case err != nil:
		return nil, fmt.Errorf("cannot be read as a picture (%w)", err)
	case config.Width == 0 || config.Height == 0:
		return nil, errors.New("has no pixels")
	case config.Width > mostPixels/config.Height:
		return nil, fmt.Errorf("has %d × %d pixels, and at most %d million are read; make it smaller", config.Width, config.Height, mostPixels/1_000_000)
	case max(config.Width, config.Height) > mostSide:
		return nil, fmt.Errorf("has %d × %d pixels, and a side of at most %d is read; make it smaller", config.Width, config.Height, mostSide)
	}
	decoded, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("is damaged or ends too soon (%w)", err)
	}
	w, h := fitted(config.Width, config.Height, keptPixels, keptPixels)
	held := orientation(data, format)
	pixels := turned(shrunk(onWhite(decoded), w, h), held)
	out := &Picture{Width: config.Width, Height: config.Height, photo: format == "jpeg", pixels: pixels, size: pixels.Rect.Size(), digest: sha256.Sum256(data)}
	if held == 1 && w == config.Width && plain(data, format, decoded) {
		out.whole = data
	}
	if (pixels.Rect.Dx() > pixels.Rect.Dy()) != (w > h) {
		out.Width, out.Height = out.Height, out.Width
	}
	return out, nil
}

// Lean is the picture without its pixels, some 17 MB of a photograph: they are made anew out of its data
// each time they are drawn.
func (p *Picture) Lean(data []byte) *Picture {
	lean := *p
	lean.pixels, lean.data = nil, data
	return &lean
}

// plain reports whether a page takes a picture as it came: eight bits a colour at the most,
// opaque, not interlaced, and not in the four inks of a press.
func plain(data []byte, format string, decoded image.Image) bool {
	if format == "jpeg" {
		switch decoded.(type) {
		case *image.YCbCr, *image.Gray:
			return true
		}
		return false
	}
	const depth, kind, interlace = 24, 25, 28 // of the header (ISO/IEC 15948, 11.2.2)
	if len(data) <= interlace || data[depth] > 8 || data[interlace] != 0 || data[kind] == 4 || data[kind] == 6 {
		return false
	}
	opaque, ok := decoded.(interface{ Opaque() bool })
	return ok && opaque.Opaque()
}

// Fitted is how many pixels of the picture go across and down where so many are wanted at
// the most; half as many again where that leaves it as it came.
func (p *Picture) Fitted(width, height int) (int, int) {
	w, h := fitted(p.size.X, p.size.Y, width, height)
	if p.whole != nil && 2*p.Width <= 3*w {
		return p.Width, p.Height
	}
	return w, h
}

// Encoded gives the picture with so many pixels across and down, as a photograph ("jpg") or
// with every edge kept ("png"), as it came: the same bytes always.
func (p *Picture) Encoded(width, height int) (format string, data []byte, err error) {
	if p.whole != nil && width == p.Width && height == p.Height {
		return map[bool]string{true: "jpg", false: "png"}[p.photo], p.whole, nil
	}
	pixels := p.pixels
	if pixels == nil {
		again, err := Read(p.data)
		if err != nil {
			return "", nil, err // it was read before
		}
		pixels = again.pixels
	}
	small := shrunk(pixels, width, height)
	var out bytes.Buffer
	if p.photo {
		err = jpeg.Encode(&out, small, &jpeg.Options{Quality: 85})
		return "jpg", out.Bytes(), err
	}
	err = (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&out, paletted(small))
	return "png", out.Bytes(), err
}

// fitted is the largest size of the same shape within others, no larger than it was.
func fitted(w, h, mostW, mostH int) (int, int) {
	if w <= mostW && h <= mostH {
		return w, h
	}
	if w*mostH > h*mostW {
		return mostW, max(1, h*mostW/w)
	}
	return max(1, w*mostH/h), mostH
}

func onWhite(decoded image.Image) *image.RGBA {
	bounds := decoded.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, bounds.Dx(), bounds.Dy()))
	draw.Draw(out, out.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(out, out.Rect, decoded, bounds.Min, draw.Over)
	return out
}

// shrunk makes a picture smaller: each pixel is the mean of the area it stands for. It
// counts in whole numbers, so that every machine gives the same bytes; kernels in floating
// point need not.
func shrunk(src *image.RGBA, width, height int) *image.RGBA {
	if src.Rect.Dy() == height && abs(src.Rect.Dx()-width) <= width/few {
		return cropped(src, width)
	}
	across := image.NewRGBA(image.Rect(0, 0, width, src.Rect.Dy()))
	for y := range src.Rect.Dy() {
		row := src.Pix[y*src.Stride:]
		means(across.Pix[y*across.Stride:], 4, width, row, 4, src.Rect.Dx())
	}
	out := image.NewRGBA(image.Rect(0, 0, width, height))
	for x := range width {
		means(out.Pix[4*x:], out.Stride, height, across.Pix[4*x:], across.Stride, src.Rect.Dy())
	}
	return out
}

// few is of how many columns a picture loses or gains one at its edge before it is made anew:
// nobody sees that.
const few = 200

func abs(n int) int { return max(n, -n) }

// cropped is a picture some columns narrower or wider at its right edge, which is repeated.
func cropped(src *image.RGBA, width int) *image.RGBA {
	if src.Rect.Dx() == width {
		return src
	}
	out := image.NewRGBA(image.Rect(0, 0, width, src.Rect.Dy()))
	for y := range src.Rect.Dy() {
		row := out.Pix[y*out.Stride : y*out.Stride+4*width]
		n := copy(row, src.Pix[y*src.Stride:y*src.Stride+4*src.Rect.Dx()])
		for ; n < len(row); n += 4 {
			copy(row[n:n+4], row[n-4:n])
		}
	}
	return out
}

// means fills a line of pixels from a longer one; steps are the bytes from pixel to pixel.
func means(to []uint8, step, n int, from []uint8, stride, all int) {
	const whole = 256 // parts of a pixel
	for i := range n {
		begin, end := i*all*whole/n, (i+1)*all*whole/n
		var sum [4]int
		for k := begin / whole; k*whole < end; k++ {
			weight := min(end, (k+1)*whole) - max(begin, k*whole)
			for c := range 4 {
				sum[c] += weight * int(from[k*stride+c])
			}
		}
		for c := range 4 {
			to[i*step+c] = uint8((sum[c] + (end-begin)/2) / (end - begin))
		}
	}
}

// orientation is what a camera wrote of how it was held, from 1 to 8; 1 where it wrote nothing.
func orientation(data []byte, format string) int {
	held := 1
	kind := imagemeta.JPEG
	if format == "png" {
		kind = imagemeta.PNG
	}
	_, _ = imagemeta.Decode(imagemeta.Options{ // what cannot be read says nothing
		R: bytes.NewReader(data), ImageFormat: kind, Sources: imagemeta.EXIF,
		ShouldHandleTag: func(tag imagemeta.TagInfo) bool { return tag.Tag == "Orientation" && tag.Namespace == "IFD0" },
		HandleTag: func(tag imagemeta.TagInfo) error {
			if n, ok := tag.Value.(uint16); ok && n >= 1 && n <= 8 {
				held = int(n)
			}
			return nil
		},
	})
	return held
}

// turned sets a picture upright that was taken as an orientation says.
func turned(src *image.RGBA, held int) *image.RGBA {
	w, h := src.Rect.Dx(), src.Rect.Dy()
	from := map[int]func(x, y int) (int, int){ // pixel of the upright picture → pixel as it was taken
		2: func(x, y int) (int, int) { return w - 1 - x, y },
		3: func(x, y int) (int, int) { return w - 1 - x, h - 1 - y },
		4: func(x, y int) (int, int) { return x, h - 1 - y },
		5: func(x, y int) (int, int) { return y, x },
		6: func(x, y int) (int, int) { return y, h - 1 - x },
		7: func(x, y int) (int, int) { return w - 1 - y, h - 1 - x },
		8: func(x, y int) (int, int) { return w - 1 - y, x },
	}[held]
	if from == nil {
		return src
	}
	out := image.NewRGBA(src.Rect)
	if held >= 5 {
		out = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			out.SetRGBA(x, y, src.RGBAAt(from(x, y)))
		}
	}
	return out
}

// paletted is a drawing of few colours with a palette, which takes a fraction of the room.
func paletted(src *image.RGBA) image.Image {
	index := map[color.RGBA]uint8{}
	var palette color.Palette
	out := image.NewPaletted(src.Rect, nil)
	for i := 0; i < len(src.Pix); i += 4 {
		c := color.RGBA{src.Pix[i], src.Pix[i+1], src.Pix[i+2], 255}
		at, known := index[c]
		if !known {
			if len(palette) == 256 {
				return src
			}
			at = uint8(len(palette))
			index[c], palette = at, append(palette, c)
		}
		out.Pix[i/4] = at
	}
	out.Palette = palette
	return out
}
