package state

import "benchleaf/compiler/internal/model"

// row says of a verb what must hold before it and what holds after it, for each
// thing it is done to.
type row struct {
	needs []func(*walk, *model.Step, model.Object)
	makes []func(*walk, *model.Step, model.Object)
}

type deed = func(*walk, *model.Step, model.Object)

func deeds(list ...deed) []deed { return list }

// verbs is what every verb needs and makes. A verb that is not here changes nothing.
var verbs = map[string]row{
	"remove":     {needs: deeds(isReached, isOn, guardsDead, isUnloaded, staysOnWheel, notJustTight), makes: deeds(comesOff, runsOut)},
	"refit":      {needs: deeds(isReached, isOff), makes: deeds(goesOn)},
	"replace":    {needs: deeds(isReached, isFree, isUnloaded), makes: deeds(isRenewed)},
	"loosen":     {needs: deeds(isReached, isThere, guardsDead, isUnloaded, onTheGround, notJustTight), makes: deeds(comesLoose, runsOut)},
	"tighten":    {needs: deeds(isReached, isIn, wasLoose, onTheGround, hangsFree), makes: deeds(isTightened)},
	"open":       {needs: deeds(isReached, guardsDead), makes: deeds(isOpened, turnsOpen, runsOut)},
	"close":      {needs: deeds(isReached, wasOpen), makes: deeds(isClosed, turnsShut)},
	"disconnect": {needs: deeds(isReached, isUnloaded), makes: deeds(isParted, runsOut)},
	"connect":    {needs: deeds(isReached, wasParted), makes: deeds(isJoined)},
	"drain":      {needs: deeds(opensBelow, letsAirIn), makes: deeds(isDrained)},
	"fill":       {needs: deeds(shutBelow, opensAbove, ventsAbove, showsLevel, wasDrained), makes: deeds(isFilled)},
	"isolate":    {makes: deeds(isCut, standsStill)},
	"prove":      {needs: deeds(isRelieved, isIsolated), makes: deeds(isProved)},
	"relieve":    {makes: deeds(isLetOut)},
	"restore":    {needs: deeds(wasCut, guardsOn, partsOn), makes: deeds(isLive)},
	"raise":      {needs: deeds(raisedOnce), makes: deeds(isRaised)},
	"support":    {makes: deeds(isSupported)},
	"lower":      {needs: deeds(isWhole, hadWork, wasRaised, isClear), makes: deeds(isLowered)},
	"turn-over":  {needs: deeds(isShut)},
	"start":      {needs: deeds(hasEnergy, runsGuarded, runsWhole, runsClosed, runsFed, runsFree), makes: deeds(isRunning)},
	"run":        {needs: deeds(hasEnergy, runsGuarded, runsWhole, runsClosed, runsFed, runsFree), makes: deeds(isRunning)},
	"stop":       {makes: deeds(standsStill)},
	"slacken":    {needs: deeds(isReached), makes: deeds(isSlack)},
	"tension":    {needs: deeds(isReached, letsMove, isLetGo), makes: deeds(isTensioned)},
	"adjust":     {needs: deeds(isReached, letsMove, isLetGo)},
	"align":      {needs: deeds(isReached, letsMove, isLetGo)},
	"sharpen":    {needs: deeds(isReached)},
	"clean":      {needs: deeds(isReached, hangsFree)},
	"grease":     {needs: deeds(isReached, hangsFree)},
	"lubricate":  {needs: deeds(isReached, hangsFree)},
	"bleed":      {needs: deeds(isReached, bleedsFed)},
	"inspect":    {needs: deeds(isSeen)},
	"check":      {needs: deeds(isSeen)},
	"measure":    {needs: deeds(isSeen)},
}
