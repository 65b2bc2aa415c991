package entry

import (
	"fmt"
	"maps"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// Check says where an entry and the card it was written by do not agree, a line each.
func (e Entry) Check(card plan.Card) []string {
	c := checkerOf(card)
	c.head(e)
	c.walked(e)
	for i, reading := range e.Readings {
		c.reading(reading)
		if slices.ContainsFunc(e.Readings[:i], func(other Reading) bool { return other.Step == reading.Step && other.What == reading.What }) {
			c.say("%s is there more than once; leave one", named(reading))
		}
	}
	return c.out
}

// Judged is the entry with each reading that is outside of the limit of the card said to be
// so. A value that cannot be read stays as it was said.
func (e Entry) Judged(card plan.Card) Entry {
	c := checkerOf(card)
	e.Readings = slices.Clone(e.Readings)
	for i, reading := range e.Readings {
		if blank, known := c.blank(reading); known {
			quiet := c
			quiet.out = nil
			if outside := quiet.value("", reading.Value, blank); len(quiet.out) == 0 {
				e.Readings[i].Outside = outside
			}
		}
	}
	return e
}

type checker struct {
	card  plan.Card
	steps map[int]plan.Step
	out   []string
}

func checkerOf(card plan.Card) checker {
	c := checker{card: card, steps: map[int]plan.Step{}}
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			c.steps[step.Number] = step
		}
	}
	return c
}

func (c *checker) say(format string, args ...any) {
	c.out = append(c.out, fmt.Sprintf(format, args...))
}

func (c *checker) head(e Entry) {
	for _, pair := range []struct{ key, has, want string }{
		{"procedure", e.Procedure, c.card.Name}, {"revision", e.Revision, c.card.Revision},
		{"machine", e.Machine, c.card.Machine}, {"variant", e.Variant, c.card.Variant},
	} {
		if pair.has != pair.want {
			c.say("%s is %q, and %q on the card", pair.key, pair.has, pair.want)
		}
	}
	if e.Date == "" {
		c.say("date is missing")
	}
	if e.Meter == "" {
		return
	}
	at := slices.IndexFunc(c.card.Blanks, func(blank plan.Blank) bool { return blank.Of == plan.Meter })
	if at < 0 {
		c.say("meter is %q, and the machine has none", e.Meter)
		return
	}
	c.value("meter", e.Meter, c.card.Blanks[at])
}

// walked holds the steps against those of the card: each is done, left out or open, once.
func (c *checker) walked(e Entry) {
	told := map[int]int{}
	for _, step := range slices.Concat(e.Done, e.Open) {
		told[step]++
	}
	for _, left := range e.LeftOut {
		told[left.Step]++
	}
	var none, often []int
	for number := 1; number <= len(c.steps); number++ {
		switch n := told[number]; {
		case n == 0:
			none = append(none, number)
		case n > 1:
			often = append(often, number)
		}
		delete(told, number)
	}
	if len(none) > 0 {
		c.say("%s neither done, nor open, nor left out", Steps(none, "is", "are"))
	}
	if len(often) > 0 {
		c.say("%s told more than once; each is done, or open, or left out", Steps(often, "is", "are"))
	}
	if strange := slices.Sorted(maps.Keys(told)); len(strange) > 0 {
		c.say("the card has no %s", Steps(strange, "", ""))
	}
}

// Steps names steps by their numbers, those in a row together, with a word behind them for
// one or for several: "step 3 is", "steps 3 to 7 and 9 are".
func Steps(numbers []int, one, several string) string {
	numbers = slices.Compact(slices.Sorted(slices.Values(numbers)))
	if len(numbers) == 1 {
		return strings.TrimSpace(fmt.Sprintf("step %d %s", numbers[0], one))
	}
	return strings.TrimSpace("steps " + runs(numbers) + " " + several)
}

// runs writes rising numbers, those in a row together: "3 to 7, 9 and 12".
func runs(numbers []int) string {
	var parts []string
	for i := 0; i < len(numbers); {
		end := i + 1
		for end < len(numbers) && numbers[end] == numbers[end-1]+1 {
			end++
		}
		if end-i > 2 {
			parts = append(parts, fmt.Sprintf("%d to %d", numbers[i], numbers[end-1]))
			i = end
			continue
		}
		parts = append(parts, fmt.Sprint(numbers[i]))
		i++
	}
	return listed(parts)
}

// listed joins parts as a sentence does: "3, 4 and 9".
func listed(parts []string) string {
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}

// plain is a text as it is typed: an amount has plain spaces in it.
func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// named is what a reading is called in a message.
func named(reading Reading) string {
	name := fmt.Sprintf("reading %q", reading.What)
	if reading.Step > 0 {
		name = fmt.Sprintf("step %d: %s", reading.Step, name)
	}
	return name
}

func (c *checker) reading(reading Reading) {
	blank, known := c.blank(reading)
	name := named(reading)
	if !known {
		c.say("%s: the card asks for none of that name there", name)
		return
	}
	if reading.Limit != plain(blank.Limit) {
		c.say("%s: limit is %q, and %q on the card", name, reading.Limit, plain(blank.Limit))
	}
	outside := c.value(name, reading.Value, blank)
	if outside != reading.Outside {
		c.say("%s: outside is %t, and %t by its value", name, reading.Outside, outside)
	}
}

// blank is the place of the card that a reading was written at; false where there is none.
func (c *checker) blank(reading Reading) (plan.Blank, bool) {
	blanks := c.card.Blanks
	if reading.Step > 0 {
		blanks = c.steps[reading.Step].Readings
	}
	at := slices.IndexFunc(blanks, func(blank plan.Blank) bool { return blank.Label == reading.What && blank.Of == "" })
	if at < 0 {
		return plan.Blank{}, false
	}
	return blanks[at], true
}

// value reads a value in the unit of its blank, and reports whether it is outside the limit.
func (c *checker) value(name, text string, blank plan.Blank) (outside bool) {
	unit, known := quantity.FindUnit(blank.Unit)
	if !known || blank.Unit == "" {
		if text == "" {
			c.say("%s: value is empty", name)
		}
		return false
	}
	amount, problems := quantity.Parse(text, unit.Dimension)
	low, bounded := amount.Min()
	high, topped := amount.Max()
	if !bounded || !topped {
		why := "no amount with a lower and an upper end"
		if len(problems) > 0 {
			why = problems[0].Message
		}
		c.say("%s: value %q: %s", name, text, why)
		return false
	}
	if low.Cmp(high) != 0 {
		c.say("%s: value %q is a range, and one figure is wanted: what was read", name, text)
		return false
	}
	least, isLeast := new(big.Rat).SetString(blank.Low)
	most, isMost := new(big.Rat).SetString(blank.High)
	return isLeast && low.Cmp(unit.ToBase(least)) < 0 || isMost && high.Cmp(unit.ToBase(most)) > 0
}
