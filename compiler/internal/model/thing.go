package model

import "benchleaf/schema"

// Shop is how the shop wants its cards.
type Shop struct {
	Thing
	Title           Text   `key:"title"`
	Units           Text   `key:"units"`
	Stock           Text   `key:"stock"`
	ReadingDistance Amount `key:"reading-distance"`
	Language        Text   `key:"language"`
	SignalLanguage  Text   `key:"signal-language"`
	Next            Text   `key:"next"`
	Soon            Amount `key:"soon"`
	Currency        Text   `key:"currency"`
	Local           Text   `key:"local"`
}

// Machine is one machine, or one type of machine with its variants.
type Machine struct {
	Thing
	Short     Text     `key:"name"`
	Title     Text     `key:"title"`
	Maker     Text     `key:"maker"`
	Model     Text     `key:"model"`
	Manual    Text     `key:"manual"`
	Variants  List     `key:"variants"`
	Meter     Text     `key:"meter"`
	InService Text     `key:"in-service"`
	Outline   []Spot   `key:"outline"`
	Lines     [][]Spot `key:"lines"`
	Rounds    []Round  `key:"rounds"`
}

// Procedure is what the job is; its steps stand in the file.
type Procedure struct {
	Thing
	Short       Text       `key:"name"`
	Title       Text       `key:"title"`
	Machine     Text       `key:"machine"`
	For         List       `key:"for"`
	Summary     Text       `key:"summary"`
	Revision    Text       `key:"revision"`
	Date        Text       `key:"date"`
	Author      Text       `key:"author"`
	Checked     Text       `key:"checked"`
	Who         Text       `key:"who"`
	People      Whole      `key:"people"`
	HandsOn     Amount     `key:"hands-on"`
	Elapsed     Amount     `key:"elapsed"`
	Every       []Amount   `key:"every"`
	First       []Amount   `key:"first"`
	When        Text       `key:"when"`
	Sooner      []*Sooner  `key:"sooner"`
	Joins       List       `key:"joins"`
	Joined      List       `key:"joined-revisions"`
	Start       List       `key:"start"`
	End         List       `key:"end"`
	NoIsolation Text       `key:"no-isolation"`
	NoClose     Text       `key:"no-close"`
	Tools       List       `key:"tools"`
	Supplies    List       `key:"supplies"`
	Spares      List       `key:"spares"`
	Wear        List       `key:"wear"`
	Cautions    List       `key:"cautions"`
	Record      List       `key:"record"`
	Manual      Text       `key:"manual"`
	Notes       List       `key:"notes"`
	Pictures    []*Picture `key:"pictures"`
	Allow       []*Allow   `key:"allow"`
}

// Sooner is a reading that brings the day of a procedure forward. One of Over, Under and
// Outside is set where no finding stands against it.
type Sooner struct {
	Thing
	Reading Text     `key:"reading"`
	Of      Text     `key:"of"`
	Over    Amount   `key:"over"`
	Under   Amount   `key:"under"`
	Outside Flag     `key:"outside"`
	Every   []Amount `key:"every"`
}

// Unit is one machine that stands in the shop.
type Unit struct {
	Thing
	Title     Text   `key:"title"`
	Machine   Text   `key:"machine"`
	Version   Text   `key:"version"`
	Serial    Text   `key:"serial"`
	InService Text   `key:"in-service"`
	MeterThen Amount `key:"meter-then"`
	Use       []*Use `key:"use"`
}

// Use is how much a machine runs over a part of the year.
type Use struct {
	Thing
	From Text   `key:"from"`
	To   Text   `key:"to"`
	Week Amount `key:"week"`
}

// Store is what is on the shelf of a fluid, a supply or a spare, which it has the name of.
type Store struct {
	Thing
	OnHand   []Amount `key:"on-hand"`
	Counted  Text     `key:"counted"`
	Keep     Amount   `key:"keep"`
	Lead     Amount   `key:"lead"`
	Supplier Text     `key:"supplier"`
	Prices   []*Price `key:"prices"`
}

// Price is what a pack costs.
type Price struct {
	Thing
	Pack  Amount `key:"pack"`
	Price Text   `key:"price"`
}

// Stock is something of the shop's own that cards are printed on.
type Stock struct {
	Thing
	Title    Text     `key:"title"`
	Width    Amount   `key:"width"`
	Height   Amount   `key:"height"`
	Border   Amount   `key:"border"`
	Binding  Amount   `key:"binding"`
	Top      Amount   `key:"top"`
	Sides    Whole    `key:"sides"`
	Turn     Text     `key:"turn"`
	Hole     []Amount `key:"hole"`
	Corner   Amount   `key:"corner"`
	Distance Amount   `key:"distance"`
}

// Step is one action.
type Step struct {
	Thing
	Section string // prepare, step or close
	Number  int    // from 1 through the whole job; set when the job is built
	Verb    schema.Verb
	Verbs   []Text // every verb key the author wrote, with its place
	Objects []Object
	Wait    Amount // the value of wait

	ID        Text       `key:"id"`
	Say       Text       `key:"say"`
	For       List       `key:"for"`
	Stage     Text       `key:"stage"`
	Count     Whole      `key:"count"`
	Torque    Amount     `key:"torque"`
	Angle     Amount     `key:"angle"`
	Passes    []Whole    `key:"passes"`
	Order     Text       `key:"order"`
	Adapter   *Adapter   `key:"adapter"`
	Condition Text       `key:"condition"`
	ByHand    Text       `key:"by-hand"`
	Amount    Amount     `key:"amount"`
	Fluid     Text       `key:"fluid"`
	Into      Text       `key:"into"`
	SetTo     Amount     `key:"set"`
	Limit     Amount     `key:"limit"`
	Expect    Text       `key:"expect"`
	Outside   Text       `key:"outside"`
	Reading   Text       `key:"reading"`
	Least     Amount     `key:"least"`
	Most      Amount     `key:"most"`
	Until     Text       `key:"until"`
	Keep      List       `key:"keep"`
	Meanwhile Flag       `key:"meanwhile"`
	Pose      Text       `key:"pose"`
	Tools     List       `key:"tools"`
	Supplies  []Used     `key:"supplies"`
	Spares    List       `key:"spares"`
	Wear      List       `key:"wear"`
	Cautions  List       `key:"cautions"`
	Own       []*Caution `key:"caution"`
	Notes     List       `key:"notes"`
	Time      Amount     `key:"time"`
	Gate      Text       `key:"gate"`
	Person    Whole      `key:"person"`
	Once      List       `key:"once"`
	Area      List       `key:"area"`
	Origin    Text       `key:"origin"`
	People    Whole      `key:"people"`
	Picture   *Picture   `key:"picture"`
	Allow     []*Allow   `key:"allow"`
	Variant   []Override `key:"variant"`
}

// Adapter changes the lever of a torque wrench.
type Adapter struct {
	Thing
	Length Amount `key:"length"`
	Wrench Amount `key:"wrench"`
	Angle  Amount `key:"angle"`
}

// Allow is a finding the author stands by.
type Allow struct {
	Thing
	Rule   Text `key:"rule"`
	Reason Text `key:"reason"`
}

// Picture is a picture from the shop folder.
type Picture struct {
	Thing
	Path   Text   `key:"file"`
	Title  Text   `key:"title"`
	Points []Spot `key:"points"`
	Shows  List   `key:"shows"`
}

// Part is a part, a set of like fasteners, or, where Cover is set, a cover or guard.
type Part struct {
	Thing
	Cover     bool
	Guards    List       `key:"guards"`
	Title     Text       `key:"title"`
	For       List       `key:"for"`
	Count     Whole      `key:"count"`
	Thread    Text       `key:"thread"`
	Head      Text       `key:"head"`
	Across    Amount     `key:"across"`
	Size      Text       `key:"size"`
	Class     Text       `key:"class"`
	Torque    Amount     `key:"torque"`
	Angle     Amount     `key:"angle"`
	Passes    []Whole    `key:"passes"`
	Order     Text       `key:"order"`
	Circles   Whole      `key:"circles"`
	Condition Text       `key:"condition"`
	Product   Text       `key:"product"`
	LeftHand  Flag       `key:"left-hand"`
	Seals     List       `key:"seals"`
	Reach     Amount     `key:"reach"`
	Access    Text       `key:"access"`
	Tool      List       `key:"tool"`
	HeldBy    List       `key:"held-by"`
	Behind    List       `key:"behind"`
	LoadedBy  List       `key:"loaded-by"`
	Mass      Amount     `key:"mass"`
	Material  Text       `key:"material"`
	Hazards   List       `key:"hazards"`
	Area      List       `key:"area"`
	Spot      []Spot     `key:"at"`
	Notes     List       `key:"notes"`
	Variant   []Override `key:"variant"`
}

// OnCircle is how many of a part sit on one bolt circle; of so many that a step counts.
func (p *Part) OnCircle(counted Whole) int {
	count := p.Count.Or(1)
	if p.Circles.N > 1 && count%p.Circles.N == 0 {
		count /= p.Circles.N
	}
	if counted.N > 0 && counted.N < count {
		return counted.N
	}
	return count
}

// Words is the part's name as it prints.
func (p *Part) Words() string { return spokenOr(p.Title, p.Name) }

// Cavity is a place that holds a fluid.
type Cavity struct {
	Thing
	Title    Text       `key:"title"`
	For      List       `key:"for"`
	Fluid    Text       `key:"fluid"`
	Capacity Amount     `key:"capacity"`
	Drain    Text       `key:"drain"`
	Fill     Text       `key:"fill"`
	Level    Text       `key:"level"`
	Vent     Text       `key:"vent"`
	Pressure Amount     `key:"pressure"`
	Hazards  List       `key:"hazards"`
	Area     List       `key:"area"`
	Spot     []Spot     `key:"at"`
	Notes    List       `key:"notes"`
	Variant  []Override `key:"variant"`
}

// Words is the cavity's name as it prints.
func (c *Cavity) Words() string { return spokenOr(c.Title, c.Name) }

// Energy is a source of energy.
type Energy struct {
	Thing
	Title    Text       `key:"title"`
	For      List       `key:"for"`
	Kind     Text       `key:"kind"`
	Isolate  Text       `key:"isolate"`
	Relieve  Text       `key:"relieve"`
	Prove    Text       `key:"prove"`
	Restore  Text       `key:"restore"`
	Voltage  Amount     `key:"voltage"`
	Pressure Amount     `key:"pressure"`
	StopsIn  Amount     `key:"stops-in"`
	Tools    List       `key:"tools"`
	Spot     []Spot     `key:"at"`
	Variant  []Override `key:"variant"`
}

// Words is the energy's name as it prints.
func (e *Energy) Words() string { return spokenOr(e.Title, e.Name) }

// Pose is a position the machine can be in.
type Pose struct {
	Thing
	Title Text `key:"title"`
	How   Text `key:"how"`
	Tools List `key:"tools"`
}

// Words is the pose's name as it prints.
func (p *Pose) Words() string { return spokenOr(p.Title, p.Name) }

// Area is a part of the machine at which one person works.
type Area struct {
	Thing
	Title Text `key:"title"`
	Apart List `key:"apart"`
}

// Words is the area's name as it prints.
func (a *Area) Words() string { return spokenOr(a.Title, a.Name) }

// Lubricated is a lubrication point, or a set of like points.
type Lubricated struct {
	Thing
	Title   Text       `key:"title"`
	For     List       `key:"for"`
	Count   Whole      `key:"count"`
	Fluid   Text       `key:"fluid"`
	Amount  Amount     `key:"amount"`
	Until   Text       `key:"until"`
	Fitting Text       `key:"fitting"`
	Tool    List       `key:"tool"`
	Every   []Amount   `key:"every"`
	Behind  List       `key:"behind"`
	Area    List       `key:"area"`
	Spot    []Spot     `key:"at"`
	Notes   List       `key:"notes"`
	Variant []Override `key:"variant"`
}

// Words is the point's name as it prints.
func (l *Lubricated) Words() string { return spokenOr(l.Title, l.Name) }

// Limit is something that is measured, with its limit.
type Limit struct {
	Thing
	Title   Text       `key:"title"`
	For     List       `key:"for"`
	How     Text       `key:"how"`
	New     Amount     `key:"new"`
	Limit   Amount     `key:"limit"`
	Outside Text       `key:"outside"`
	Tool    List       `key:"tool"`
	HeldBy  List       `key:"held-by"`
	Behind  List       `key:"behind"`
	Area    List       `key:"area"`
	Anew    List       `key:"anew-after"`
	Spot    []Spot     `key:"at"`
	Variant []Override `key:"variant"`
}

// Words is the limit's name as it prints.
func (l *Limit) Words() string { return spokenOr(l.Title, l.Name) }

// Tool is a tool on the wall, or a set of like tools.
type Tool struct {
	Thing
	Title    Text     `key:"title"`
	Kind     Text     `key:"kind"`
	Sizes    []Amount `key:"sizes"`
	Points   List     `key:"points"`
	Drive    Text     `key:"drive"`
	DriveOut Text     `key:"drive-out"`
	Length   Amount   `key:"length"`
	Range    Amount   `key:"range"`
	Holds    Amount   `key:"holds"`
	Count    Whole    `key:"count"`
	Number   Text     `key:"number"`
	Where    Text     `key:"where"`
	Hazards  List     `key:"hazards"`
}

// Fluid is an oil, a grease or another fluid.
type Fluid struct {
	Thing
	Title     Text     `key:"title"`
	Kind      Text     `key:"kind"`
	Grade     Text     `key:"grade"`
	Service   Text     `key:"service"`
	Thickener Text     `key:"thickener"`
	Packs     []Amount `key:"packs"`
	Stroke    Amount   `key:"stroke"`
	Number    Text     `key:"number"`
	Where     Text     `key:"where"`
	Sheet     Text     `key:"sheet"`
	Hazards   List     `key:"hazards"`
}

// Words is the fluid's name as it prints.
func (f *Fluid) Words() string { return spokenOr(f.Title, f.Name) }

// Supply is a consumable that is not a lubricant.
type Supply struct {
	Thing
	Title   Text     `key:"title"`
	Packs   []Amount `key:"packs"`
	Number  Text     `key:"number"`
	Where   Text     `key:"where"`
	Sheet   Text     `key:"sheet"`
	Hazards List     `key:"hazards"`
}

// Words is the supply's name as it prints.
func (s *Supply) Words() string { return spokenOr(s.Title, s.Name) }

// Spare is a part that is renewed.
type Spare struct {
	Thing
	Title    Text  `key:"title"`
	Number   Text  `key:"number"`
	Pack     Whole `key:"pack"`
	Reusable Flag  `key:"reusable"`
	Where    Text  `key:"where"`
	Hazards  List  `key:"hazards"`
}

// Words is the spare's name as it prints.
func (s *Spare) Words() string { return spokenOr(s.Title, s.Name) }

// Caution is a safety message: written in a library, for one step, or built in,
// which has no place.
type Caution struct {
	Thing
	Signal       Text `key:"signal"`
	Against      List `key:"against"`
	Hazard       Text `key:"hazard"`
	Consequence  Text `key:"consequence"`
	SecondHazard Text `key:"second-hazard"`
	Avoid        Text `key:"avoid"`
	Wear         List `key:"wear"`
	Signs        List `key:"signs"`
}

// Object is what a verb acts on: a thing by its name, or words.
type Object struct {
	Text   Text
	Kind   string // part, cover, cavity, energy, point, limit, spare, fluid, supply, procedure, words
	Part   *Part  // also for a cover
	Cavity *Cavity
	Energy *Energy
	Point  *Lubricated
	Limit  *Limit
	Spare  *Spare
	Fluid  *Fluid
	Supply *Supply
	Other  *Procedure
}

// Words is the object's name as it prints.
func (o Object) Words() string {
	switch {
	case o.Part != nil:
		return o.Part.Words()
	case o.Cavity != nil:
		return o.Cavity.Words()
	case o.Energy != nil:
		return o.Energy.Words()
	case o.Point != nil:
		return o.Point.Words()
	case o.Limit != nil:
		return o.Limit.Words()
	case o.Spare != nil:
		return o.Spare.Words()
	case o.Fluid != nil:
		return o.Fluid.Words()
	case o.Supply != nil:
		return o.Supply.Words()
	case o.Other != nil:
		return o.Other.Title.Text
	default:
		return o.Text.Text
	}
}

// Lasts reports whether a step takes its time by itself, so that others can be done
// meanwhile: a wait, or a run that has a time or an end.
func (s *Step) Lasts() bool {
	switch s.Verb.Key {
	case "wait":
		return true
	case "run", "start":
		return s.Least.Set() || s.Most.Set() || s.Until.Set()
	}
	return false
}

// HeldAgainst is the limit a step holds something to: its own, or its object's.
func (s *Step) HeldAgainst() Amount {
	limit := s.Limit
	for _, object := range s.Objects {
		if object.Limit != nil && !limit.Set() {
			limit = object.Limit.Limit
		}
	}
	return limit
}
