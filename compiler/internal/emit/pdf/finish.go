package pdf

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"benchleaf/compiler/internal/pages"
)

// finishing writes a file of the library anew: with the faces in place of their stand-ins, what
// is long compressed, and the pages counted as the document says. It goes by the table of the
// file, which says where each object begins (ISO 32000-1, 7.5).
type finishing struct {
	doc   pages.Document
	used  map[pages.Face]groups
	from  []byte
	out   []byte
	count int         // of objects
	at    map[int]int // where an object begins in what is written
	more  [][]byte    // objects that are added behind
}

// misread is what is said of a file that is not as the library writes it (fpdf 0.9.0).
func misread(what string) error { return fmt.Errorf("pdf: the library wrote %s", what) }

func finish(file []byte, doc pages.Document, used map[pages.Face]groups) ([]byte, error) {
	f := &finishing{doc: doc, used: used, from: file, at: map[int]int{}, out: make([]byte, 0, len(file)/2)}
	starts, table, err := f.places()
	if err != nil {
		return nil, err
	}
	f.count = len(starts)
	order := make([]int, 0, f.count) // of the numbers, by their places
	for number := range f.count {
		order = append(order, number+1)
	}
	slices.SortFunc(order, func(a, b int) int { return starts[a-1] - starts[b-1] })
	if f.count == 0 || starts[order[0]-1] > table || starts[order[f.count-1]-1] > table {
		return nil, misread("no objects")
	}
	f.out = append(f.out, file[:starts[order[0]-1]]...)
	for i := 0; i < len(order); i++ {
		end := table
		if i+1 < len(order) {
			end = starts[order[i+1]-1]
		}
		object := file[starts[order[i]-1]:end]
		face, isFont := fontOf(object)
		if !isFont {
			if err := f.object(order[i], object); err != nil {
				return nil, err
			}
			continue
		}
		// The library writes the widths and the measures right behind.
		if i+2 >= len(order) || order[i+1] != order[i]+1 || order[i+2] != order[i]+2 {
			return nil, misread("a font in another way")
		}
		if err := f.font(order[i], face); err != nil {
			return nil, err
		}
		i += 2
	}
	for i, object := range f.more {
		f.begin(len(starts) + 1 + i)
		f.out = append(append(f.out, object...), "\nendobj\n"...)
	}
	f.trailer(len(starts))
	return f.out, nil
}

// places reads the table of the file: where each object begins, and where the table does.
func (f *finishing) places() (starts []int, table int, err error) {
	const mark = "startxref\n"
	at := bytes.LastIndex(f.from, []byte(mark))
	if at < 0 {
		return nil, 0, misread("no table")
	}
	text, _, _ := strings.Cut(string(f.from[at+len(mark):]), "\n")
	if table, err = strconv.Atoi(text); err != nil || table < 0 || table >= at {
		return nil, 0, misread("a table nowhere")
	}
	lines := strings.Split(string(f.from[table:at]), "\n")
	if len(lines) < 3 || lines[0] != "xref" {
		return nil, 0, misread("no table where it says")
	}
	for _, line := range lines[3:] { // behind the head and the object that is none
		if len(line) < 10 || line == "trailer" {
			break
		}
		start, err := strconv.Atoi(line[:10])
		if err != nil || start < 0 || start >= table {
			return nil, 0, misread("an object nowhere")
		}
		starts = append(starts, start)
	}
	return starts, table, nil
}

// begin writes the head of an object.
func (f *finishing) begin(number int) {
	f.at[number] = len(f.out)
	f.out = append(strconv.AppendInt(f.out, int64(number), 10), " 0 obj\n"...)
}

// fontOf says which face an object of the library stands in for.
func fontOf(object []byte) (pages.Face, bool) {
	_, rest, found := bytes.Cut(object[:min(len(object), 60)], []byte("<</Type /Font\n/BaseFont /face"))
	if !found {
		return 0, false
	}
	number, _, _ := bytes.Cut(rest, []byte("\n"))
	face, err := strconv.Atoi(string(number))
	return pages.Face(face), err == nil
}

const stream, endStream = "stream\n", "\nendstream\n"

// object writes an object of the library: a stream that is long is compressed, and the catalogue
// says how the pages are counted (ISO 32000-1, 12.4.2), which the library has no call for.
func (f *finishing) object(number int, object []byte) error {
	const catalogue, plain = "/Type /Catalog\n", "<</Length "
	_, body, found := bytes.Cut(object, []byte(" obj\n"))
	if !found {
		return misread("an object without a head")
	}
	f.begin(number)
	if rest, is := bytes.CutPrefix(body, []byte(plain)); is {
		text, rest, _ := bytes.Cut(rest, []byte(">>\n"+stream))
		length, err := strconv.Atoi(string(text))
		if err != nil || length < 0 || length > len(rest) || !bytes.HasPrefix(rest[length:], []byte(endStream)) {
			return misread("a stream of another length")
		}
		f.out = append(packed(f.out, "", deflated(rest[:length])), "\nendobj\n"...)
		return nil
	}
	if at := bytes.Index(body, []byte(catalogue)); at >= 0 && number == f.count && len(f.doc.Numbering) > 0 {
		at += len(catalogue)
		f.out = append(append(f.out, body[:at]...), labels(f.doc.Numbering)...)
		body = body[at:]
	}
	f.out = append(f.out, body...)
	return nil
}

// packed is a stream that is compressed, behind what there is, with the keys that it has besides.
func packed(out []byte, keys string, text []byte) []byte {
	out = fmt.Appendf(out, "<<%s/Filter /FlateDecode /Length %d>>\n%s", keys, len(text), stream)
	return append(append(out, text...), endStream[:len(endStream)-1]...)
}

// add adds an object that is compressed behind those of the library, and gives its number.
func (f *finishing) add(keys string, text []byte) int {
	f.more = append(f.more, packed(nil, keys, text))
	return f.count + len(f.more)
}

// labels say how the pages are counted.
func labels(numbering []pages.Numbering) string {
	out := "/PageLabels <</Nums ["
	for _, one := range numbering {
		style := "D"
		if one.Roman {
			style = "r"
		}
		out += fmt.Sprintf("%d <</S /%s>> ", one.Side-1, style)
	}
	return out + "]>>\n"
}

// font writes a face in place of its stand-in, in three objects: the font, its letters, and
// its measures (ISO 32000-1, 9.7).
func (f *finishing) font(number int, face pages.Face) error {
	if f.used[face] == 0 {
		return misread("a font that nothing is written in")
	}
	one, err := typefaces[face]()
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	cut, err := one.cut(f.used[face])
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	for _, text := range []string{
		fmt.Sprintf("<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>", cut.name, number+1, f.unicode()),
		fmt.Sprintf("<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> /FontDescriptor %d 0 R /W [%s] /CIDToGIDMap %d 0 R>>",
			cut.name, number+2, cut.widths, f.add("", cut.glyphs)),
		fmt.Sprintf("%s%d 0 R>>", cut.descriptor, f.add(fmt.Sprintf("/Length1 %d ", cut.length), cut.file)),
	} {
		f.begin(number)
		f.out = append(append(f.out, text...), "\nendobj\n"...)
		number++
	}
	return nil
}

// unicodes is what the faces share.
var unicodes = sync.OnceValue(func() []byte { return deflated([]byte(unicode)) })

// unicode is the number of the object that says which letter is meant; all faces share it.
func (f *finishing) unicode() int {
	if len(f.more) == 0 {
		f.add("", unicodes())
	}
	return f.count + 1
}

// trailer writes the table of the objects and the end. The library has the catalogue last and what is told
// of the document before it.
func (f *finishing) trailer(catalogue int) {
	table, count := len(f.out), f.count+len(f.more)+1
	f.out = fmt.Appendf(f.out, "xref\n0 %d\n0000000000 65535 f \n", count)
	for number := 1; number < count; number++ {
		f.out = fmt.Appendf(f.out, "%010d 00000 n \n", f.at[number])
	}
	f.out = fmt.Appendf(f.out, "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n>>\nstartxref\n%d\n%%%%EOF\n", count, catalogue, catalogue-1, table)
}
