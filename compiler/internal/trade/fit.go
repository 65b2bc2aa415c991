package trade

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"
)

// Fitting says how well a tool goes on a hexagon, best first.
type Fitting int

// The ways a tool can fit.
const (
	Same        Fitting = iota // the same size
	Good                       // another size with at most 1 % slack
	Loose                      // at most 2 % slack: light hand loads only
	TooLoose                   // rounds the corners
	WillNotGoOn                // the opening may be smaller than the hexagon
)

var fittingWords = []string{"same", "good", "loose", "too loose", "will not go on"}

func (f Fitting) String() string { return fittingWords[f] }

const (
	goodSlack  = 0.01
	looseSlack = 0.02
	sameMM     = 1e-6
)

// leastOpening is the smallest opening a wrench of that size may have: inch by ASME
// B107.17 (1.005 W + 0.001 in), metric 1.003 S after ISO 691; both from memory, the inch
// one reproduces the published 1.508 in for a 1-1/2 in wrench.
func leastOpening(tool Width) float64 {
	if tool.Inch {
		return 1.005*tool.MM + 0.001*mmPerInch
	}
	return 1.003 * tool.MM
}

// Fit says whether a wrench or socket fits a hexagon head or nut, and why. The largest
// width across flats of a fastener is its nominal one, so the tool goes on for certain
// when its least opening is no smaller. The slack then decides; 1 % and 2 % are common
// practice, no source.
func Fit(tool, fastener Width) (Fitting, string) {
	if math.Abs(tool.MM-fastener.MM) < sameMM {
		return Same, "the same size"
	}
	if opening := leastOpening(tool); opening < fastener.MM {
		return WillNotGoOn, fmt.Sprintf("%s may open only %s mm and the hexagon may be %s mm", tool.Label, digits(opening), digits(fastener.MM))
	}
	slack := (tool.MM - fastener.MM) / fastener.MM
	return bySlack(slack), explain(tool, fastener, slack)
}

func bySlack(slack float64) Fitting {
	switch {
	case slack <= goodSlack:
		return Good
	case slack <= looseSlack:
		return Loose
	}
	return TooLoose
}

func explain(tool, fastener Width, slack float64) string {
	if slack <= 0 {
		return fmt.Sprintf("%s is %s mm below %s, inside the clearance of the tool", tool.Label, digits(fastener.MM-tool.MM), fastener.Label)
	}
	text := fmt.Sprintf("%s is %.1f %% over %s", tool.Label, 100*slack, fastener.Label)
	switch bySlack(slack) {
	case Loose:
		return text + ": light hand loads only"
	case TooLoose:
		return text + ": it rounds the corners"
	}
	return text
}

// FitKey says whether a hexagon key or bit fits a hexagon socket, and why. A key larger
// than the socket will not go in for certain, and a socket is shallow, so that more than
// 1 % slack rounds it out: there is no "loose". So a 5/32 in key serves a 4 mm socket.
// Common practice, no source.
func FitKey(tool, socket Width) (Fitting, string) {
	slack := (socket.MM - tool.MM) / socket.MM
	switch {
	case math.Abs(tool.MM-socket.MM) < sameMM:
		return Same, "the same size"
	case slack < 0:
		return WillNotGoOn, fmt.Sprintf("%s is %s mm over the %s socket", tool.Label, digits(tool.MM-socket.MM), socket.Label)
	case slack <= goodSlack:
		return Good, fmt.Sprintf("%s is %.1f %% under the %s socket", tool.Label, 100*slack, socket.Label)
	}
	return TooLoose, fmt.Sprintf("%s is %.1f %% under the %s socket: it rounds the socket out", tool.Label, 100*slack, socket.Label)
}

func digits(mm float64) string {
	return strconv.FormatFloat(math.Round(mm*1000)/1000, 'f', -1, 64)
}

// StandIns lists the sizes of wrench and socket, out of those sold, that serve a hexagon
// of another size: good ones first, then loose ones, each by size.
func StandIns(fastener Width) []Width { return standIns(fastener, wrenchesSold, Fit) }

// StandInKeys is StandIns for hexagon keys and bits in a hexagon socket.
func StandInKeys(socket Width) []Width { return standIns(socket, keysSold, FitKey) }

func standIns(fastener Width, sold []Width, fits func(Width, Width) (Fitting, string)) []Width {
	var out []Width
	fit := map[string]Fitting{}
	for _, tool := range sold {
		if how, _ := fits(tool, fastener); how == Good || how == Loose {
			fit[tool.Label] = how
			out = append(out, tool)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		if a, b := fit[out[i].Label], fit[out[j].Label]; a != b {
			return a < b
		}
		return out[i].MM < out[j].MM
	})
	return slices.Clip(out)
}

// The sizes sold, made once, when the program starts.
var (
	wrenchesSold = soldWrenches()
	keysSold     = soldKeys()
)

// soldWrenches are the sizes found in shops, metric 4 to 80 and inch 5/32 to 3-1/8. Common practice, no source.
func soldWrenches() []Width {
	return sold([]float64{4, 5, 5.5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 32, 33, 34, 35, 36, 38, 41, 46, 50, 55, 60, 65, 70, 75, 80},
		[]string{"5/32", "3/16", "7/32", "1/4", "9/32", "5/16", "11/32", "3/8", "7/16", "1/2", "9/16", "19/32", "5/8", "11/16", "3/4", "25/32", "13/16", "7/8", "15/16",
			"1", "1-1/16", "1-1/8", "1-3/16", "1-1/4", "1-5/16", "1-3/8", "1-7/16", "1-1/2", "1-9/16", "1-5/8", "1-11/16", "1-3/4", "1-13/16", "1-7/8", "1-15/16",
			"2", "2-1/16", "2-1/8", "2-3/16", "2-1/4", "2-3/8", "2-7/16", "2-1/2", "2-9/16", "2-5/8", "2-3/4", "2-15/16", "3", "3-1/8"})
}

// soldKeys are the sizes of hexagon key: metric of ISO 2936, inch of ASME B18.3; from memory.
func soldKeys() []Width {
	return sold([]float64{0.9, 1.3, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 14, 17, 19, 22, 24, 27, 32, 36},
		[]string{"1/16", "5/64", "3/32", "7/64", "1/8", "9/64", "5/32", "3/16", "7/32", "1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8", "1"})
}

func sold(metric []float64, inch []string) []Width {
	var out []Width
	for _, mm := range metric {
		out = append(out, metricWidth(mm))
	}
	for _, text := range inch {
		out = append(out, inchWidth(mustInch(text)))
	}
	return out
}
