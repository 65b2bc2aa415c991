package picture

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/draw"
)

// corners is a picture 48 wide and 32 high whose quarters are red, green, blue and black,
// from the upper left clockwise.
func corners() *image.RGBA {
	out := image.NewRGBA(image.Rect(0, 0, 48, 32))
	for y := range 32 {
		for x := range 48 {
			c := color.RGBA{255, 0, 0, 255}
			switch {
			case x >= 24 && y < 16:
				c = color.RGBA{0, 255, 0, 255}
			case x >= 24:
				c = color.RGBA{0, 0, 255, 255}
			case y >= 16:
				c = color.RGBA{0, 0, 0, 255}
			}
			out.SetRGBA(x, y, c)
		}
	}
	return out
}

// asHeld stores a picture as a camera does that was held so. Exif 2.32, 4.6.4: the visual
// side at which the first row and the first column of what is stored lie.
func asHeld(upright *image.RGBA, row, column string) *image.RGBA {
	w, h := upright.Rect.Dx(), upright.Rect.Dy()
	across, down := w, h
	sideways := row == "left" || row == "right"
	if sideways {
		across, down = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, across, down))
	for r := range down {
		for c := range across {
			x, y := c, r
			place := func(side string, n int) {
				switch side {
				case "left":
					x = n
				case "right":
					x = w - 1 - n
				case "top":
					y = n
				case "bottom":
					y = h - 1 - n
				}
			}
			place(row, r)
			place(column, c)
			out.SetRGBA(c, r, upright.RGBAAt(x, y))
		}
	}
	return out
}

// withExif puts an Exif block with an orientation behind the first marker of a JPEG.
func withExif(t *testing.T, pixels image.Image, orientation uint16) []byte {
	var plain bytes.Buffer
	require.NoError(t, jpeg.Encode(&plain, pixels, &jpeg.Options{Quality: 100}))
	tiff := []byte("MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01")
	tiff = binary.BigEndian.AppendUint16(tiff, orientation)
	tiff = append(tiff, 0, 0, 0, 0, 0, 0)
	block := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{0xFF, 0xD8, 0xFF, 0xE1}, binary.BigEndian.AppendUint16(nil, uint16(len(block)+2))...)
	return append(append(out, block...), plain.Bytes()[2:]...)
}

func TestAPhotographIsTurnedUpright(t *testing.T) {
	for orientation, sides := range [][2]string{{"top", "left"}, {"top", "right"}, {"bottom", "right"}, {"bottom", "left"}, {"left", "top"}, {"right", "top"}, {"right", "bottom"}, {"left", "bottom"}} {
		out, err := Read(withExif(t, asHeld(corners(), sides[0], sides[1]), uint16(orientation+1)))
		require.NoError(t, err)
		assert.Equal(t, [2]int{48, 32}, [2]int{out.Width, out.Height}, "orientation %d", orientation+1)
		for _, at := range []image.Point{{6, 6}, {42, 6}, {42, 26}, {6, 26}} {
			want, got := corners().RGBAAt(at.X, at.Y), out.pixels.RGBAAt(at.X, at.Y)
			assert.InDelta(t, want.R, got.R, 12, "orientation %d at %v", orientation+1, at)
			assert.InDelta(t, want.G, got.G, 12, "orientation %d at %v", orientation+1, at)
			assert.InDelta(t, want.B, got.B, 12, "orientation %d at %v", orientation+1, at)
		}
	}
}

// A smooth picture comes out as another scaler makes it (golang.org/x/image/draw, Catmull-Rom).
func TestSmallerIsTheSamePicture(t *testing.T) {
	src := image.NewRGBA(image.Rect(0, 0, 301, 197))
	for y := range 197 {
		for x := range 301 {
			src.SetRGBA(x, y, color.RGBA{uint8(x * 255 / 300), uint8(y * 255 / 196), uint8((x + y) * 255 / 496), 255})
		}
	}
	for _, size := range []image.Point{{300, 196}, {150, 98}, {97, 61}, {40, 13}, {1, 1}} {
		ours := shrunk(src, size.X, size.Y)
		theirs := image.NewRGBA(image.Rect(0, 0, size.X, size.Y))
		draw.CatmullRom.Scale(theirs, theirs.Rect, src, src.Rect, draw.Src, nil)
		for i := range ours.Pix {
			assert.InDelta(t, theirs.Pix[i], ours.Pix[i], 4, "%v", size)
		}
	}
}

// The mean of a picture stays what it was, whatever the picture.
func TestSmallerIsAsBright(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		w, h := 2+dice.IntN(60), 2+dice.IntN(60)
		src := image.NewRGBA(image.Rect(0, 0, w, h))
		for i := range src.Pix {
			src.Pix[i] = uint8(dice.IntN(256))
		}
		out := shrunk(src, 1+dice.IntN(w), 1+dice.IntN(h))
		assert.InDelta(t, mean(src), mean(out), 1)
	}
}

func mean(p *image.RGBA) float64 {
	sum := 0
	for _, value := range p.Pix {
		sum += int(value)
	}
	return float64(sum) / float64(len(p.Pix))
}

func TestWhatIsEncodedIsTheSize(t *testing.T) {
	for _, photo := range []bool{true, false} {
		var data bytes.Buffer
		if photo {
			require.NoError(t, jpeg.Encode(&data, corners(), nil))
		} else {
			require.NoError(t, png.Encode(&data, corners()))
		}
		one, err := Read(data.Bytes())
		require.NoError(t, err)
		for _, most := range []image.Point{{1000, 1000}, {24, 1000}, {1000, 8}, {1, 1}} {
			w, h := one.Fitted(most.X, most.Y)
			assert.LessOrEqual(t, w, most.X)
			assert.LessOrEqual(t, h, most.Y)
			_, encoded, err := one.Encoded(w, h)
			require.NoError(t, err)
			again, format, err := image.DecodeConfig(bytes.NewReader(encoded))
			require.NoError(t, err)
			assert.Equal(t, [2]int{w, h}, [2]int{again.Width, again.Height})
			assert.Equal(t, map[bool]string{true: "jpeg", false: "png"}[photo], format)
		}
	}
}

// What is seen through lies on white: print has no other ground.
func TestWhatIsSeenThroughLiesOnWhite(t *testing.T) {
	glass := image.NewNRGBA(image.Rect(0, 0, 4, 4))
	glass.SetNRGBA(1, 1, color.NRGBA{0, 0, 0, 128})
	var data bytes.Buffer
	require.NoError(t, png.Encode(&data, glass))
	out, err := Read(data.Bytes())
	require.NoError(t, err)
	assert.Equal(t, color.RGBA{255, 255, 255, 255}, out.pixels.RGBAAt(3, 3))
	assert.InDelta(t, 127, out.pixels.RGBAAt(1, 1).R, 1)
}

func TestABadPictureSaysWhy(t *testing.T) {
	var whole bytes.Buffer
	require.NoError(t, png.Encode(&whole, corners()))
	huge := bytes.Clone(whole.Bytes())
	binary.BigEndian.PutUint32(huge[16:], 40_000)
	binary.BigEndian.PutUint32(huge[20:], 40_000)
	for says, data := range map[string][]byte{
		"is neither PNG nor JPEG inside": []byte("GIF89a"), "ends too soon": whole.Bytes()[:60], "cannot be read as a picture": huge,
	} {
		_, err := Read(data)
		assert.ErrorContains(t, err, says)
	}
}

// What is decoded is kept small, so that the fuzzer tries many.
func FuzzRead(f *testing.F) {
	var whole, photo bytes.Buffer
	_ = png.Encode(&whole, corners())
	_ = jpeg.Encode(&photo, corners(), nil)
	f.Add(whole.Bytes())
	f.Add(photo.Bytes())
	f.Add(whole.Bytes()[:40])
	f.Add([]byte("\xff\xd8\xff\xe1\x00\x10Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08"))
	f.Add(huge(100_000, 100_000))
	f.Add(huge(1, 1<<31-1))
	f.Fuzz(func(t *testing.T, data []byte) {
		config, _, wrong := image.DecodeConfig(bytes.NewReader(data))
		if wrong == nil && config.Width*config.Height > 1<<20 && max(config.Width, config.Height) <= mostSide && config.Width*config.Height <= mostPixels {
			return // takes long, and is read like any other
		}
		one, err := Read(data)
		if err != nil {
			assert.NotEmpty(t, err.Error())
			return
		}
		require.NoError(t, wrong)
		assert.Equal(t, config.Width*config.Height, one.Width*one.Height, "all of it, upright or turned")
		w, h := one.Fitted(20, 20)
		format, encoded, err := one.Encoded(w, h)
		require.NoError(t, err, "%d × %d", w, h)
		_, again, err := one.Encoded(w, h)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(encoded, again), "other bytes")
		shown, kind, err := image.Decode(bytes.NewReader(encoded))
		require.NoError(t, err)
		assert.Equal(t, image.Pt(w, h), shown.Bounds().Size())
		assert.Equal(t, map[string]string{"jpg": "jpeg", "png": "png"}[format], kind)
	})
}

// huge is a PNG that says it is large, and has nothing behind its header.
func huge(width, height uint32) []byte {
	head := append([]byte("IHDR"), binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, width), height)...)
	head = append(head, 8, 2, 0, 0, 0)
	out := binary.BigEndian.AppendUint32([]byte("\x89PNG\r\n\x1a\n"), 13)
	return binary.BigEndian.AppendUint32(append(out, head...), crc32.ChecksumIEEE(head))
}

// A picture that makes its pixels anew comes out the same.
func TestALeanPictureComesOutTheSame(t *testing.T) {
	for held := 1; held <= 8; held++ {
		data := withExif(t, corners(), uint16(held))
		one, err := Read(data)
		require.NoError(t, err)
		lean := one.Lean(data)
		for _, most := range []int{10, 30, 1000} {
			w, h := one.Fitted(most, most)
			leanW, leanH := lean.Fitted(most, most)
			assert.Equal(t, [2]int{w, h}, [2]int{leanW, leanH})
			format, want, err := one.Encoded(w, h)
			require.NoError(t, err)
			leanFormat, got, err := lean.Encoded(w, h)
			require.NoError(t, err)
			assert.Equal(t, format, leanFormat)
			assert.True(t, bytes.Equal(want, got), "other bytes")
		}
	}
}

// What is larger than is read is told by its header, and never decoded.
func TestAPictureThatSaysItIsHuge(t *testing.T) {
	for _, c := range []struct {
		width, height uint32
		says          string
	}{{100_000, 100_000, "100000 × 100000 pixels, and at most 52 million"}, {1<<31 - 1, 1<<31 - 1, "cannot be read as a picture"}, {1, 20_001, "a side of at most 20000"}, {20_001, 2000, "a side of at most 20000"}, {20_000, 2600, "damaged or ends too soon"}} {
		_, err := Read(huge(c.width, c.height))
		assert.ErrorContains(t, err, c.says)
	}
}

// A picture that a page takes as it came is not coded again; one that is turned, seen
// through or interlaced is.
func TestWhatAPageTakesIsLeftAsItCame(t *testing.T) {
	var opaque, glass bytes.Buffer
	require.NoError(t, png.Encode(&opaque, corners()))
	require.NoError(t, png.Encode(&glass, image.NewNRGBA(image.Rect(0, 0, 48, 32))))
	upright, lying := withExif(t, corners(), 1), withExif(t, corners(), 6)
	for name, c := range map[string]struct {
		data []byte
		left bool
	}{"png": {opaque.Bytes(), true}, "glass": {glass.Bytes(), false}, "upright": {upright, true}, "lying": {lying, false}} {
		one, err := Read(c.data)
		require.NoError(t, err)
		_, encoded, err := one.Encoded(one.Width, one.Height)
		require.NoError(t, err)
		assert.Equal(t, c.left, bytes.Equal(encoded, c.data), name)
		_, smaller, err := one.Encoded(one.Fitted(10, 10))
		require.NoError(t, err)
		assert.NotEqual(t, c.data, smaller)
	}
}
