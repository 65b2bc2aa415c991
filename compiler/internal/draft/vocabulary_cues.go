package draft

func cues(written string) *phrases[bool] { return &phrases[bool]{written: written, value: true} }

// breaks are words that a clause ends before.
var breaks = set("and but so then because cause cos otherwise unless although though while whereas it'll you'll they're they'll just only")

// turns are words that lead back from a story to the job.
var turns = set("but so anyway anyhow then don't")

// storyCues begin what happened once, or what others do.
var storyCues = cues("you hear of|i heard of|i know a|i know of|there was a|there was one|they used to|we used to|i used to|he used to|people used to|back in the day|years ago|a minute ago i|last winter|last spring|last summer|last autumn|last month|last week|yesterday|the time i|the day i|a year ago|a few years ago|one fella|one lad|one guy|one bloke|some other|dad always|my dad|my father|grandad|the old man|the old boy|how do i|guys run|lads run|folks run|i did in|i told|did it in|that one was done|done in the fall|done last|was done in|the story of|some people|some lads|some folk|some folks|some fellas|some guys|some of them have|some of them put|a lad|a mate|a fella|a bloke|a guy|a chap|there's a lad|there's a fella|i had|i saw|i once|i've seen|i have seen|i knew|we had one|the last fella|the last guy|the last lad|the last bloke|the previous owner|somebody put|somebody once|someone put|someone once|he had|last year|year before last|the other day|one time|that one time|before my time|the apprentice|on the old machine|on the other machine|on the big one|the other one takes|next door")

// oldCues tell of what is no more.
var oldCues = cues("used to be|used to|was the old one|that was the old|from the previous|previous type|the old model|older ones had|old ones had|on the old one|on the older|ignore that|not on this one|there isn't one|hasn't got one|haven't got one|doesn't have one|there is no|there's no|no longer|sidewall says|some book says|the book says but|the sticker says but|it says on the")

// shortCues tell what others do in a few words, in notes without marks.
var shortCues = cues("people do|people crush|people put|people over|folks do|everybody does|lads do|folks pour|folks put|people pour|people think")

var denials = cues("don't|do not|never|not|no|without|rather than|instead of|isn't|aren't|can't|cannot|doesn't|won't|wouldn't|needn't|didn't|shouldn't|nobody|dont|doesnt|never ever|forget|leave")

// notDenials hold the word of a denial and deny nothing.
var notDenials = cues("no bubbles|no air|no leaks|no play|no noise|no slack|no pressure|no load|no number|no more|not more|not over|no doubt|no matter|don't forget|never forget|not only|not bad|no need|don't know|i don't know|i've no idea|no idea|not sure|no wait|no sorry|no problem|no bother|not just|no number|never mind|if not|whether or not|or not|leave it run|leave it stand|leave it settle|leave it for|leave it at|leave it to|leave that|leave them|leave for|leave ten|leave it on|leave the|nobody under|nobody in|nobody near|nobody at|not hot|without the|do not touch|won't start|doesn't start|won't turn|can't jump")

// takenBack deny also what stands before them: "crack the pipes, no you don't".
var takenBack = cues("won't fit|doesn't fit|won't do|no you don't|no don't|no you needn't|no not that|no we don't")

// slipCues stand between what was said wrong and what is right.
var slipCues = cues("telling a lie|i'm telling a lie|no i'm telling a lie|i should say|no i mean|no not that|wait no|oh no|no no|my mistake|excuse me|or should i say|what i mean is|i meant|sorry i meant|beg your pardon|strike that|rang back|rings back|called back|no wait|no sorry|no hang on|no hold on|er no|uh no|um no|no that's|no it's|sorry|i mean|i tell a lie|tell a lie|scratch that|strike that|correction|make that|call it|or rather|no|er|no make that|what am i saying|actually no|hang on")

// pauses are words with which a speaker goes on to something else; halts those before which a
// clause ends; beforePause are words behind which they do not.
var (
	pauses      = cues("next we'll|next i'll|next let's|next one|okay next|alright next|moving on|then there's|then i|then i'll|and then i|and then there|so i|so if|so let|so let's|so when|so here|so this|let's|let me|first thing|second thing|first of all|the first thing|the next thing|the last thing|while i'm|while we're|and after that|and finally|and next|and also|also|okay the|okay this|okay that|okay and|alright the|right the|right so the|nowokay so|okay now|okay then|ok so|ok now|alright so|alright now|right so|right now we|right then|next up|next thing|next is|next you|next we|next job|after that|and then you|and then we|and then it|and then the|and then take|and then put|and then just|and then that|then you|then we|then the|then take|then put|then it|so you|so we|so now|so what|so the|so once|so first|so then|so make|so take|so that's|so it's|once you|once that|once it|once the|make sure|finally|lastly|anyway|and once|and when|and if|while you|while it|while that|and the last thing|and last")
	halts       = cues("but|because|and you|and we|and i|and it|and that|and they|and there|if it|if the|if you|if they|which|unless")
	beforePause = set("and or but so if even just do does is by until till before since what how the a when where than that right")
)
