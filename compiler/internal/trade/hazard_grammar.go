package trade

import "strings"

// grammar numbers the lists of words that say how a sentence is built.
func (k *knowledge) grammar() {
	k.looks = k.list("check|inspect|compare|read|note|record|photograph|count")
	k.deniers = k.list("no|not|never|non|without|don't|doesn't|isn't|aren't|cannot|can't|mustn't|needn't|shouldn't")
	k.passedOver = k.list("the|a|an|any|more|use|using|apply|ever|longer|your|each|every|both|all")
	k.articles = k.list("the|a|an|of|its|this|that|each")
	k.joins = k.list("and|or|then|but")
	// Words after which a verb no longer acts on what follows.
	k.turnsAway = k.list("check|inspect|look|read|note|measure|record|watch|listen|compare|see|mark|photograph|write|count|wipe|find|keep|refer|" +
		"behind|beside|above|below|near|beyond|until|unless|before|after|while|so|for|because|if|when|reach|expose|with|using")
	// Words that forbid a deed, and those before which "not" does.
	k.orders = k.list("never|don't|cannot|can't|mustn't|needn't|shouldn't")
	k.mayNot = k.list("do|must|may|shall|should|need|can")
	k.clauseEnds = k.list("and|but|then|until|till|unless|while|whilst|when|if|before|after|so|because|without|except|where")
	// Deeds that are forbidden to what is there all the same: "do not let the acid run", "do not touch the hot pipe".
	k.spared = k.list("let|allow|drop|spill|forget|damage*|bend|kink|twist|lose|scratch|breathe|inhale|over*|nick|stretch|leave|touch|open|stop|switch|mix|wait|hurry|trust|rely|fail|only|just|point|aim|smoke|exceed")
	// Words that allow after all what was forbidden before.
	k.later = k.list("until|till|unless|before|except")
	k.needless = k.list("needed|necessary|required|allowed|permitted|forbidden|prohibited|banned")
	k.nobody = k.list("nothing|nobody|none")
	k.onIt = k.list("on|of|for|at")
	k.offIt = k.list("off|from")
	k.trifles = k.list("label*|sticker*|decal*|tag|tags|tape|note|poster|magnet|rag|cloth|lamp|snow|leaves|tools")
}

// past reports whether a word tells what was done before: "with the belt removed, turn the idler".
func past(word string) bool {
	return strings.HasSuffix(word, "ed") && !strings.HasSuffix(word, "eed") // bleed, feed
}

func participle(word string) bool {
	return past(word) || strings.HasSuffix(word, "ing") || word == "undone" || word == "off"
}

// denied reports whether a word is ruled out by what stands before it.
func denied(words []word, at int) bool {
	if words[at].ruled {
		return true
	}
	for i := at - 1; i >= 0 && i >= at-4 && words[i].sentence == words[at].sentence; i-- {
		w := &words[i]
		switch {
		case w.in(known().deniers):
			return !w.later
		case (w.lower == "of" || w.lower == "from") && i > 0 && words[i-1].lower == "free",
			w.lower == "of" && i > 0 && words[i-1].lower == "instead", w.lower == "than" && i > 0 && words[i-1].lower == "rather":
			return true
		case !w.in(known().passedOver):
			return false
		}
	}
	return false
}

// ruledAhead is how many words after "never" or "do not" it rules out at most.
const ruledAhead = 9

// ruleOut marks what an order forbids ("never go under a raised load") and what is called
// needless ("a permit is not needed"), to the end of its clause.
func ruleOut(words []word) {
	for at := range words {
		w := &words[at]
		before := at > 0 && words[at-1].sentence == w.sentence
		switch {
		case w.in(known().orders), w.lower == "not" && before && words[at-1].in(known().mayNot):
			if w.later = follows(words, at, known().later); !w.later {
				forbid(words, at)
			}
		case w.lower == "need" && before && words[at-1].lower == "no":
			forbid(words, at)
		case w.in(known().nobody) && (!before || w.comma):
			ruleAhead(words, at, -1)
		case w.in(known().nobody), w.lower == "one" && before && words[at-1].lower == "no":
			forbid(words, at)
		case w.in(known().needless):
			needless(words, at)
		}
	}
}

// forbid rules out the clause after an order not to do something, but not what is there
// whether the order is kept or not.
func forbid(words []word, at int) {
	deed := at + 1
	if deed < len(words) && words[deed].lower == "ever" {
		deed++
	}
	if deed < len(words) && !words[deed].in(known().spared) {
		ruleAhead(words, at, known().clauseEnds)
	}
}

func ruleAhead(words []word, at, ends int) {
	for i := at + 1; i < len(words) && i <= at+ruledAhead && words[i].sentence == words[at].sentence && !words[i].comma; i++ {
		if ends >= 0 && words[i].in(ends) {
			return
		}
		words[i].ruled = true
	}
}

// needless rules out what stands before "is not needed" or "is forbidden".
func needless(words []word, at int) {
	no := strings.HasSuffix(words[at].lower, "ned") || strings.HasPrefix(words[at].lower, "forb") || strings.HasPrefix(words[at].lower, "proh")
	for i := at - 1; i >= 0 && i >= at-2 && words[i].sentence == words[at].sentence; i-- {
		no = no || words[i].in(known().deniers)
	}
	if no && at+1 < len(words) && words[at+1].lower == "to" {
		ruleAhead(words, at, known().clauseEnds)
	}
	for i := at - 1; no && i >= 0 && words[i].sentence == words[at].sentence && !words[i].in(known().clauseEnds); i-- {
		words[i].ruled = true
		if words[i].comma {
			return
		}
	}
}

// follows reports whether a word of a list comes later in the sentence.
func follows(words []word, at, list int) bool {
	for i := at + 1; i < len(words) && words[i].sentence == words[at].sentence; i++ {
		if words[i].in(list) {
			return true
		}
	}
	return false
}
