package source

// Picture is a file of the shop that holds a picture, with its path as the shop knows it.
type Picture struct {
	Path  string
	Bytes []byte
	Fault string // why its bytes could not be read, in words that go on from its name; empty where they are there
}
