package trade

import "strings"

// Drive is a square drive of hand tools (ISO 1174-1).
type Drive struct {
	Label       string  // "1/2 in"
	NominalMM   float64 // the size ISO 1174-1 names it by: 12.5
	SquareMM    float64 // the exact inch size: 12.7
	HandLimitNm float64 // most torque by hand, ISO 6789; from memory
	SocketsMM   [2]float64
	SocketsIn   [2]string // usual range of sockets; common practice, no source
}

// Drives lists the square drives, smallest first. Sizes: ISO 1174-1. Hand limits:
// ISO 6789, largest torque for each square, from memory.
func Drives() []Drive {
	return []Drive{
		{"1/4 in", 6.3, 6.35, 30, [2]float64{4, 14}, [2]string{"5/32", "9/16"}},
		{"3/8 in", 10, 9.525, 135, [2]float64{8, 22}, [2]string{"5/16", "7/8"}},
		{"1/2 in", 12.5, 12.7, 340, [2]float64{10, 32}, [2]string{"3/8", "1-1/4"}},
		{"3/4 in", 20, 19.05, 1000, [2]float64{19, 55}, [2]string{"3/4", "2-3/16"}},
		{"1 in", 25, 25.4, 2100, [2]float64{36, 80}, [2]string{"1-7/16", "3-1/8"}},
	}
}

// FindDrive looks a drive up by the way it is written: "1/2 in", "1/2", `1/2"`, "12.5 mm", "12.7 mm".
func FindDrive(text string) (Drive, bool) {
	plain := strings.Join(strings.Fields(strings.ToLower(text)), "")
	plain = strings.TrimSuffix(strings.TrimSuffix(strings.TrimSuffix(plain, "inch"), "in"), `"`)
	for _, drive := range Drives() {
		if plain == strings.TrimSuffix(drive.Label, " in") || plain == number(drive.NominalMM)+"mm" || plain == number(drive.SquareMM)+"mm" {
			return drive, true
		}
	}
	return Drive{}, false
}

// ParseDrive is FindDrive with an error that says what is known.
func ParseDrive(text string) (Drive, error) {
	if drive, ok := FindDrive(text); ok {
		return drive, nil
	}
	return Drive{}, unknown("square drive", text, keysOf(Drives(), func(d Drive) string { return d.Label }))
}

// DriveFor is the smallest drive whose hand limit takes a torque; none takes more than 2100 N·m.
func DriveFor(torqueNm float64) (Drive, bool) {
	for _, drive := range Drives() {
		if torqueNm <= drive.HandLimitNm {
			return drive, true
		}
	}
	return Drive{}, false
}

// Weakest is the smallest square of a chain of handle, adapters and socket: it limits
// the torque of the whole chain.
func Weakest(first Drive, others ...Drive) Drive {
	for _, drive := range others {
		if drive.SquareMM < first.SquareMM {
			first = drive
		}
	}
	return first
}
