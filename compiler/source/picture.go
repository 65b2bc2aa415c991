package source

// Picture is a file of the shop that holds a picture, with its path as the shop knows it.
type Picture struct {
	Path  string
	Bytes []byte
	Near  string // the name of one beside it that may be meant, where it is not there; or empty
	Fault string // why its bytes could not be read, in words that go on from its name; empty where they are there
}
