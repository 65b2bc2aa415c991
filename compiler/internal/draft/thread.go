package draft

import (
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/trade"
)

// threadAt reads a thread: M12, M ten by one point five, five eighths eleven, quarter twenty.
func threadAt(words []word, at int) (string, int) {
	w := words[at].lower
	if w == "m" && !endsHere(words, at+1) {
		if n, next := numberAt(words, at+1); next > at+1 && (n.whole || n.decimals != "") {
			return metric(words, n.text(false), next)
		}
		return "", at
	}
	if bare, ok := strings.CutPrefix(w, "m"); ok && numeric(bare) {
		size, pitch, by := strings.Cut(bare, "x")
		if !by {
			if !figuresPoint(size) {
				return "", at
			}
			return metric(words, size, at+1)
		}
		if figuresPoint(size) && figuresPoint(pitch) {
			return "M" + size + "x" + pitch, at + 1
		}
		return "", at
	}
	if pipe, n := pipes.at(words, at); n > 0 {
		if size, next := numberAt(words, at+n); next > at+n && size.fraction {
			return pipe + " " + size.text(true), next
		}
	}
	return inchThread(words, at)
}

var pipes = &phrases[string]{fill: func(out *phrases[string]) {
	out.addAll("bsp|b s p|bspp", "BSPP")
	out.addAll("npt|n p t", "NPT")
}}

func figuresPoint(text string) bool { return figures(strings.Replace(text, ".", "", 1)) && text != "" }

// metric reads the pitch or the length behind a metric thread.
func metric(words []word, size string, next int) (string, int) {
	if _, err := trade.ParseThread("M" + size); err != nil {
		return "", -1
	}
	if !endsHere(words, next) && (words[next].lower == "by" || words[next].lower == "x" || words[next].lower == "×") {
		if n, after := numberAt(words, next+1); after > next+1 {
			if wide, err := strconv.Atoi(size); err == nil && n.whole && n.int() >= 4 && n.int() < wide && n.int()*6 > wide && words[next].lower != "by" {
				return "M" + size, next // M24 x 8: eight of them
			}
			return "M" + size + "x" + n.text(false), after
		}
	}
	return "M" + size, next
}

// inchThread reads five eighths eleven, 3/8-16, quarter twenty.
func inchThread(words []word, at int) (string, int) {
	size, next := numberAt(words, at)
	if next == at || !size.fraction || endsHere(words, next) {
		return "", at
	}
	pipeAt := next
	if u, n := unitAt(words, next); n > 0 && u.symbol == "in" {
		pipeAt += n
	}
	if !endsHere(words, pipeAt) {
		if pipe, n := pipes.at(words, pipeAt); n > 0 {
			return pipe + " " + size.text(true), pipeAt + n // quarter inch BSP
		}
	}
	if u, n := unitAt(words, next); n > 0 && u.symbol == "in" { // half inch thirteen
		next += n
	}
	pitch, after := numberAt(words, next)
	if after == next || words[next].stop != 0 || !pitch.whole || pitch.int() < 4 || pitch.int() > 40 {
		return "", at
	}
	if _, unit := unitAt(words, after); unit > 0 {
		return "", at
	}
	if _, tool := toolAt(words, after); tool > 0 && words[after].stop == 0 {
		return "", at
	}
	text := size.text(true) + "-" + pitch.text(false)
	if _, err := trade.ParseThread(text); err != nil {
		return "", at
	}
	return text, after
}

var classes = []string{"4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"}

// classAt reads a strength class: 8.8, ten point nine, grade five, SAE grade eight.
func classAt(words []word, at int, before []item) (string, int) {
	if n, next := numberAt(words, at); next > at && n.decimals != "" && slices.Contains(classes, n.text(false)) {
		if _, unit := unitAt(words, next); unit > 0 {
			return "", at
		}
		close := len(before) > 0 && at-before[len(before)-1].to < 6 && (before[len(before)-1].kind == threadItem || before[len(before)-1].kind == partItem && before[len(before)-1].part.class == fastener)
		if close || !endsHere(words, next) && (words[next].stem == "bolt" || words[next].stem == "screw") {
			return n.text(false), next
		}
		return "", at
	}
	if text, to := drive(words, at); to > at {
		return text, to
	}
	from := at
	if n := letters(words, at, "sae"); n > 0 {
		from += n
	}
	if words[min(from, len(words)-1)].lower != "grade" && words[min(from, len(words)-1)].lower != "class" || from+1 >= len(words) {
		return "", at
	}
	n, next := numberAt(words, from+1)
	if next == from+1 {
		return "", at
	}
	if n.decimals != "" {
		return n.text(false), next
	}
	if !slices.Contains([]int{2, 5, 8}, n.int()) {
		return "", at
	}
	sae := ""
	if from > at {
		sae = "SAE "
	} else if behind := letters(words, min(next, len(words)-1), "sae"); next < len(words) && behind > 0 {
		sae, next = "SAE ", next+behind
	}
	return sae + "grade " + n.text(false), next
}

// drive reads the size of a six-lobe socket: T27, T thirty beside torx. It stands near a screw or its key.
func drive(words []word, at int) (string, int) {
	bare, ok := strings.CutPrefix(words[at].lower, "t")
	if !ok {
		return "", at
	}
	to := at + 1
	if bare == "" {
		n, next := numberAt(words, min(at+1, len(words)-1))
		if next <= at+1 || words[at+1].stop != 0 || !n.whole {
			return "", at
		}
		bare, to = n.text(false), next
	}
	if size, err := strconv.Atoi(bare); err != nil || size < 5 || size > 100 || size%5 != 0 && size != 6 && size != 7 && size != 8 && size != 9 && size != 27 {
		return "", at
	}
	for i := max(at-6, 0); i < min(to+4, len(words)); i++ {
		if words[i].sentence != words[at].sentence {
			continue
		}
		if w := words[i].stem; w == "torx" || heads()[w] == fastener && to-at == 1 {
			return "T" + bare, to
		}
	}
	return "", at
}
