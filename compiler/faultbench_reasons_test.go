package compiler_test

// reasons says of each kind of fault that is not always found why.
var reasons = map[string]string{
	"remove dropped":                             "to renew the belts says that the old ones come off",
	"replace after refit of what holds it":       "the split pin is a spare that stands for no part, so that nothing says that the cap hides it",
	"step of another part of the job":            "a clean or a look in words that nothing else names",
	"tool of the next size":                      "the other torque wrench reaches the torque as well",
	"tool dropped from the list":                 "another tool of the list serves",
	"tool dropped at a step":                     "a second wrench that holds against, a bar or a mallet: other steps take it too, so that it stays on the list",
	"supply dropped at a step":                   "rags: other steps use them too, so that they stay on the list",
	"tool dropped at the energy, point or limit": "another tool of the list serves, or the words name the instrument",
	"torque wrench with a smaller range":         "it still reaches the torque",
	"socket with another drive":                  "another ratchet and torque wrench of the list turn it",
	"tool of another size":                       "an open wrench of the list serves",
}
