package draft

// foreignWords are small words of the languages that technicians write around here and that mean
// nothing in English: German, Dutch, French, Spanish, Italian, Portuguese, Polish, Swedish.
var foreignWords = set("und der das dem ein eine einen nicht auf mit dann zuerst aus raus zu bis oder wieder nach vom zum ist sind wird werden ab los fest " +
	"het een van voor eerst uit naar niet dan daarna " +
	"le les et est une dans avec puis sur pour pas avant du aux " +
	"el los las una con para luego por del y " +
	"il gli della poi di e che " +
	"os uma depois da não " +
	"nie jest oraz potem się " +
	"och av på inte sedan med")

// englishWords are small words that nearly every sentence of English has one of.
var englishWords = set("the a an and it is are to of off out in on at with up then that this you so if no one till for it's there's down take put check new")

// foreignAt gives the first word of notes that seem to be in another language than English, -1
// where they do not.
func foreignAt(words []word) int {
	first, foreign, english := -1, 0, 0
	for i, w := range words {
		switch {
		case foreignWords.has(w.lower):
			foreign++
			if first < 0 {
				first = i
			}
		case englishWords.has(w.lower):
			english++
		}
	}
	if foreign < 3 || foreign <= english {
		return -1
	}
	return first
}
