package plan

// Words are the fixed words of a page in one language, read from
// templates/words. Every field must be filled; a test holds each language to that.
type Words struct {
	Language   string            `toml:"language"`          // BCP 47
	Article    string            `toml:"article"`           // before the object of a sentence; empty where the sentences need none
	Capitals   bool              `toml:"nouns-in-capitals"` // what begins with a capital keeps it inside a sentence
	Amounts    Amounts           `toml:"amounts"`
	Units      map[string]string `toml:"units"` // units that are words, by the English ones; none in English
	Labels     Labels            `toml:"labels"`
	Signals    map[string]string `toml:"signals"`    // danger, warning, caution, notice
	Signs      map[string]string `toml:"signs"`      // numbers of ISO 7010
	Protection map[string]string `toml:"protection"` // keys of the protective equipment
	Verbs      map[string]string `toml:"verbs"`      // sentence of each verb, with {object}
	Proofs     map[string]string `toml:"proofs"`     // sentence of a proof for each kind of energy
	Heads      map[string]string `toml:"heads"`      // short word for each kind of head
	Conditions map[string]string `toml:"conditions"` // state of a thread
	Orders     map[string]string `toml:"orders"`     // order on a bolt circle
	Kinds      map[string]string `toml:"kinds"`      // kinds of tool
	Hazards    map[string]Told   `toml:"hazards"`    // built-in safety messages by the hazard; none in English, which the trade has
}

// Amounts is how amounts are written.
type Amounts struct {
	To      string `toml:"to"` // "20 to 30 mm"
	AtLeast string `toml:"at-least"`
	AtMost  string `toml:"at-most"`
	About   string `toml:"about"`
	Comma   bool   `toml:"comma"` // decimal comma, in figures that were worked out
}

// Told is a built-in safety message in one language.
type Told struct {
	Hazard      string `toml:"hazard"`      // noun phrase, no full stop
	Consequence string `toml:"consequence"` // sentence
	Worst       string `toml:"worst"`       // the same where the message is a DANGER and is usually milder; empty where it never rises so far
	Avoid       string `toml:"avoid"`       // sentences
}

// Labels are the words that stand on the page whatever the procedure.
type Labels struct {
	Colon         string `toml:"colon"` // behind a label
	Card          string `toml:"card"`
	Machine       string `toml:"machine"`
	Variant       string `toml:"variant"`
	Revision      string `toml:"revision"`
	Author        string `toml:"author"`
	Checked       string `toml:"checked"`
	Who           string `toml:"who"`
	People        string `toml:"people"`
	HandsOn       string `toml:"hands-on"`
	Elapsed       string `toml:"elapsed"`
	Every         string `toml:"every"`
	First         string `toml:"first"`
	When          string `toml:"when"`
	Start         string `toml:"start"`
	End           string `toml:"end"`
	Safety        string `toml:"safety"`
	Energy        string `toml:"energy"`
	Isolate       string `toml:"isolate"`
	Prove         string `toml:"prove"`
	NoEnergy      string `toml:"no-energy"`
	Bring         string `toml:"bring"`
	Wear          string `toml:"wear"`
	Tools         string `toml:"tools"`
	Supplies      string `toml:"supplies"`
	Spares        string `toml:"spares"`
	Waste         string `toml:"waste"`
	None          string `toml:"none"`
	Or            string `toml:"or"`
	Prepare       string `toml:"prepare"`
	Work          string `toml:"work"`
	Close         string `toml:"close"`
	Meanwhile     string `toml:"meanwhile"`
	Wait          string `toml:"wait"`
	Outside       string `toml:"outside"`
	IfNot         string `toml:"if-not"`
	Latest        string `toml:"latest"`
	Caught        string `toml:"caught"`
	Instead       string `toml:"instead"`
	Note          string `toml:"note"`
	Record        string `toml:"record"`
	Limit         string `toml:"limit"`
	Hours         string `toml:"hours"`
	Date          string `toml:"date"`
	Initials      string `toml:"initials"`
	Continued     string `toml:"continued"`
	TurnOver      string `toml:"turn-over"`
	NextSheet     string `toml:"next-sheet"`
	EndOfCard     string `toml:"end-of-card"`
	EndOfList     string `toml:"end-of-list"`
	Side          string `toml:"side"`  // "Side {n} of {all}"
	Sheet         string `toml:"sheet"` // "Sheet {n}"
	Manual        string `toml:"manual"`
	Local         string `toml:"local"`   // the line on local rules and licensed practice
	Allowed       string `toml:"allowed"` // findings the author stands by
	Pick          string `toml:"pick"`
	Procedures    string `toml:"procedures"`
	For           string `toml:"for"`
	Take          string `toml:"take"`
	Where         string `toml:"where"`
	Serves        string `toml:"serves"`
	Quantity      string `toml:"quantity"`
	StandIn       string `toml:"stand-in"`
	Missing       string `toml:"missing"` // what no tool on the wall serves
	Torque        string `toml:"torque"`
	Amount        string `toml:"amount"`
	Set           string `toml:"set"`
	Time          string `toml:"time"`
	Angle         string `toml:"angle"`
	Pressure      string `toml:"pressure"`
	AtMost        string `toml:"at-most"`
	Wrench        string `toml:"wrench"` // what the torque wrench is set to
	Until         string `toml:"until"`
	UntilGoing    string `toml:"until-behind"` // goes on from the sentence of a step
	With          string `toml:"with"`
	WithTools     string `toml:"with-tools"` // before tools by their titles
	Into          string `toml:"into"`
	And           string `toml:"and"`
	All           string `toml:"all"`     // for all procedures of a pick list
	Of            string `toml:"of"`      // "2 of 8"
	Expect        string `toml:"expect"`  // what is seen when all is well
	Keep          string `toml:"keep"`    // what must hold during a wait
	ByHand        string `toml:"by-hand"` // tightened by hand on purpose
	Drive         string `toml:"drive"`
	Pose          string `toml:"pose"`
	New           string `toml:"new"`
	Used          string `toml:"used"`
	Left          string `toml:"left"` // left over: "0.7 L left"
	LeftHand      string `toml:"left-hand"`
	Passes        string `toml:"passes"`
	Map           string `toml:"map"`
	History       string `toml:"history"`
	HistoryDone   string `toml:"history-done"`
	HistoryOpen   string `toml:"history-open"`
	HistoryNone   string `toml:"history-none"`
	HistorySource string `toml:"history-source"`
	Serial        string `toml:"serial"`
	InService     string `toml:"in-service"`
	NewMeter      string `toml:"new-meter"`
	NotDone       string `toml:"not-done"`
	Overdue       string `toml:"overdue"`
	Due           string `toml:"due"`
	Soon          string `toml:"soon"`
	Later         string `toml:"later"`
	NotKnown      string `toml:"not-known"`
	OnCondition   string `toml:"on-condition"`
	DueList       string `toml:"due-list"`
	DueDay        string `toml:"due-day"`
	LastDone      string `toml:"last-done"`
	Never         string `toml:"never"`
	Between       string `toml:"between"`
	OutsideLast   string `toml:"outside-last"`
	LeftOutLast   string `toml:"left-out-last"`
	BegunLast     string `toml:"begun-last"`
	NotFinished   string `toml:"not-finished"`
	StepsLeftOut  string `toml:"steps-left-out"`
	Shopping      string `toml:"shopping"`
	OnHand        string `toml:"on-hand"`
	Costs         string `toml:"costs"`
	RunsOut       string `toml:"runs-out"` // "runs out {day}, at {job}"
	OrderBy       string `toml:"order-by"` // "order by {day}"
	Together      string `toml:"together"`
	BuyNow        string `toml:"buy-now"`
	BuySoon       string `toml:"buy-soon"`
	Enough        string `toml:"enough"`
	NotCounted    string `toml:"not-counted"`
	NothingToBuy  string `toml:"nothing-to-buy"`
	JoinTitle     string `toml:"join-title"`
	JoinSummary   string `toml:"join-summary"`
	JoinProved    string `toml:"join-proved"`
	JoinBounded   string `toml:"join-bounded"`
	JoinWhen      string `toml:"join-when"`
	JoinLocked    string `toml:"join-locked"`
	JoinOff       string `toml:"join-off"`
	JoinUp        string `toml:"join-up"`
	JoinWhole     string `toml:"join-whole"`
	JoinGate      string `toml:"join-gate"`
	JoinBetween   string `toml:"join-between"`
	JoinCuts      string `toml:"join-cuts"`
	JoinCovers    string `toml:"join-covers"`
	JoinTurns     string `toml:"join-turns"`
	JoinFill      string `toml:"join-fill"`
	JoinFillOne   string `toml:"join-fill-one"`
	JoinWhy       string `toml:"join-why"`
	JoinPerson    string `toml:"join-person"` // "Person {n}"
	JoinBoth      string `toml:"join-both"`
	JoinOnce      string `toml:"join-once"` // "Once step {n} is done."
	JoinLocks     string `toml:"join-locks"`
	JoinClear     string `toml:"join-clear"`
	JoinUnlock    string `toml:"join-unlock"`
	JoinHeld      string `toml:"join-held"`
	JoinTime      string `toml:"join-time"`
	JoinReady     string `toml:"join-ready"`
	JoinWait      string `toml:"join-wait"`
	Sooner        string `toml:"sooner"` // why its day was brought forward
	SoonerOver    string `toml:"sooner-over"`
	SoonerUnder   string `toml:"sooner-under"`
	SoonerOutside string `toml:"sooner-outside"`
	NeverDone     string `toml:"never-done"`
	NoMeter       string `toml:"no-meter"`
	FewMeter      string `toml:"few-meter"`
	IdleMeter     string `toml:"idle-meter"`
	ByUse         string `toml:"by-use"`
	OtherMeter    string `toml:"other-meter"` // "no meter counts its {unit}"
	RunningHours  string `toml:"running-hours"`
	OldMeter      string `toml:"old-meter"` // behind what a meter stood at that is replaced
	HeldCard      string `toml:"held-card"`
	BringList     string `toml:"bring-list"`
	ToKeep        string `toml:"to-keep"`
	TrendBefore   string `toml:"trend-before"`
	TrendTotal    string `toml:"trend-total"`
	TrendAhead    string `toml:"trend-ahead"`   // "… {total} is {shows} on the one fitted now."
	TrendRenewed  string `toml:"trend-renewed"` // "… on {day}, …"
	TrendJumped   string `toml:"trend-jumped"`
	NotRead       string `toml:"not-read"`
	Each          string `toml:"each"`
	Contact       string `toml:"contact"`
	Signs         string `toml:"signs"`
	EachCircle    string `toml:"each-circle"`
	Points        string `toml:"points"` // "2 fittings"
	Fewest        string `toml:"fewest"`
	Few           string `toml:"few"`
	AtMeter       string `toml:"at-meter"`    // "at {meter}"
	BookFaults    string `toml:"book-faults"` // what could not be taken of the service book
	NothingDue    string `toml:"nothing-due"`
	Planner       string `toml:"planner"`
	Months        string `toml:"months"`       // the twelve, short
	WeekShort     string `toml:"week-short"`   // before its number
	PlannerNote   string `toml:"planner-note"` // how the marks are to be read
	PlannerBar    string `toml:"planner-bar"`
	PlannerLate   string `toml:"planner-late"`
	// of the phone page
	View       string `toml:"view"`
	OneStep    string `toml:"one-step"`
	AllSteps   string `toml:"all-steps"`
	Screen     string `toml:"screen"`
	AsDevice   string `toml:"as-device"`
	Light      string `toml:"light"`
	Dark       string `toml:"dark"`
	ToSteps    string `toml:"to-steps"`
	Before     string `toml:"before"`
	After      string `toml:"after"`
	Begin      string `toml:"begin"`
	Back       string `toml:"back"`
	Next       string `toml:"next"`
	DoneNext   string `toml:"done-next"`
	StepOf     string `toml:"step-of"`
	StepDone   string `toml:"step-done"`
	DoneOf     string `toml:"done-of"`
	LeaveOut   string `toml:"leave-out"`
	LeftOutWhy string `toml:"left-out-why"`
	StillOpen  string `toml:"still-open"`
	Within     string `toml:"within"`
	NoFigure   string `toml:"no-figure"`
	Timer      string `toml:"timer"`
	StartTimer string `toml:"start-timer"`
	Pause      string `toml:"pause"`
	GoOn       string `toml:"go-on"`
	SetBack    string `toml:"set-back"`
	TimeOver   string `toml:"time-over"`
	OverBy     string `toml:"over-by"`
	Remarks    string `toml:"remarks"`
	Entry      string `toml:"entry"`
	EntryLead  string `toml:"entry-lead"`
	Save       string `toml:"save"`
	Saved      string `toml:"saved"`
	Copy       string `toml:"copy"`
	Copied     string `toml:"copied"`
	NotCopied  string `toml:"not-copied"`
	StartAgain string `toml:"start-again"`
	WipeSure   string `toml:"wipe-sure"`
	NotTaken   string `toml:"not-taken"`
	KeepThem   string `toml:"keep-them"`
	Wipe       string `toml:"wipe"`
	KeptHere   string `toml:"kept-here"`
	NotKept    string `toml:"not-kept"`
	Changed    string `toml:"changed"`

	// of the approval sheet
	Approval    string `toml:"approval"`
	Approved    string `toml:"approved"`
	Signature   string `toml:"signature"`
	Stands      string `toml:"stands"`
	StepsOf     string `toml:"steps"`
	Findings    string `toml:"findings"`
	NoFindings  string `toml:"no-findings"`
	Figures     string `toml:"figures"`
	Reason      string `toml:"reason"`
	NoSource    string `toml:"no-source"`
	Fit         string `toml:"fit"`
	HeldBack    string `toml:"held-back"`
	Step        string `toml:"step"`
	AtStep      string `toml:"at-step"`  // "step 4"
	AtSteps     string `toml:"at-steps"` // "steps 4, 9"
	Loose       string `toml:"loose"`
	Open        string `toml:"open"`
	Closed      string `toml:"closed"`
	Off         string `toml:"off"`
	Empty       string `toml:"empty"`
	Isolated    string `toml:"isolated"`
	Slack       string `toml:"slack"`
	Apart       string `toml:"apart"`
	FitBare     string `toml:"fit-bare"` // where figures have no source: {none}
	Proved      string `toml:"proved"`
	Raised      string `toml:"raised"`
	OnStands    string `toml:"on-stands"`
	LiveOn      string `toml:"live-on"`
	EndOfSheet  string `toml:"end-of-sheet"`
	Error       string `toml:"error"`
	Warned      string `toml:"warned"`
	Errors      string `toml:"errors"`
	Warnings    string `toml:"warnings"`
	Notes       string `toml:"notes"`
	Accepted    string `toml:"accepted-count"`
	FigureCount string `toml:"figure-count"`
	ReadAgain   string `toml:"read-again"`
	Unread      string `toml:"unread"` // of a shop whose language is not read

	// of the record sheet
	RecordSheet string `toml:"record-sheet"`
	EachTime    string `toml:"each-time"`
	AllDone     string `toml:"all-done"`

	// of the wall chart
	WallChart   string `toml:"wall-chart"`
	ChartJobs   string `toml:"chart-jobs"`
	ChartPoints string `toml:"chart-points"`
	ChartNote   string `toml:"chart-note"`

	// of the trend sheet
	Trend         string `toml:"trend"`
	TrendReadings string `toml:"trend-readings"`
	TrendReading  string `toml:"trend-reading"`
	TrendOutside  string `toml:"trend-outside"`
	TrendLine     string `toml:"trend-line"`
	TrendBand     string `toml:"trend-band"`
	TrendMeets    string `toml:"trend-meets"`
	TrendMeeting  string `toml:"trend-meeting"` // "{limit} {at} {early} {late}"
	TrendFar      string `toml:"trend-far"`     // "{limit} {at}"
	TrendFew      string `toml:"trend-few"`     // "{n} {least}"
	TrendNoFigure string `toml:"trend-no-figure"`
	TrendNoSpread string `toml:"trend-no-spread"`
	TrendFlat     string `toml:"trend-flat"`
	TrendPast     string `toml:"trend-past"` // "{limit}"
	TrendAway     string `toml:"trend-away"` // "{limit}"
	TrendNoLimit  string `toml:"trend-no-limit"`

	// of the gauge
	Gauge      string `toml:"gauge"`
	GaugeTrue  string `toml:"gauge-true"`
	GaugeWidth string `toml:"gauge-width"`

	// of the manual
	ManualTitle  string `toml:"manual-title"`
	OwnFirst     string `toml:"own-first"` // the line on the machine's own manual
	Machines     string `toml:"machines"`
	Revisions    string `toml:"revisions"`
	Contents     string `toml:"contents"`
	Index        string `toml:"index"`
	Page         string `toml:"page"`
	Procedure    string `toml:"procedure"`
	Data         string `toml:"data"` // the figures of a machine
	SafetyLead   string `toml:"safety-lead"`
	DangerMeans  string `toml:"danger-means"`
	WarningMeans string `toml:"warning-means"`
	CautionMeans string `toml:"caution-means"`
	NoticeMeans  string `toml:"notice-means"`
	StandsIn     string `toml:"stands-in"`
	Maker        string `toml:"maker"`
	Model        string `toml:"model"`
	Torques      string `toml:"torques"`
	Fastener     string `toml:"fastener"`
	Thread       string `toml:"thread"`
	Class        string `toml:"class"`
	Condition    string `toml:"condition"`
	Capacities   string `toml:"capacities"`
	Fluid        string `toml:"fluid"`
	Capacity     string `toml:"capacity"`
	Wrenches     string `toml:"wrenches"`
	Size         string `toml:"size"`
	Lubrication  string `toml:"lubrication"`
	Point        string `toml:"point"`
	Limits       string `toml:"limits"`
	Measured     string `toml:"measured"`
	WhenNew      string `toml:"when-new"`
	Intervals    string `toml:"intervals"`
	ThenEvery    string `toml:"then-every"`
	Parts        string `toml:"parts"`
	Fluids       string `toml:"fluids"`
}
