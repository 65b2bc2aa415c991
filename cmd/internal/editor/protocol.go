package editor

// What the Language Server Protocol 3.17 calls the messages that are read and written here, as
// far as they are used. Source: https://microsoft.github.io/language-server-protocol/specifications/lsp/3.17/specification/

type position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

type span struct {
	Start position `json:"start"`
	End   position `json:"end"`
}

type location struct {
	URI   string `json:"uri"`
	Range span   `json:"range"`
}

type documentID struct {
	URI     string `json:"uri"`
	Version *int   `json:"version,omitempty"`
}

type documentItem struct {
	URI     string `json:"uri"`
	Version int    `json:"version"`
	Text    string `json:"text"`
}

type openParams struct {
	Document documentItem `json:"textDocument"`
}

type closeParams struct {
	Document documentID `json:"textDocument"`
}

type changeParams struct {
	Document documentID `json:"textDocument"`
	Changes  []struct {
		Range *span  `json:"range"`
		Text  string `json:"text"`
	} `json:"contentChanges"`
}

type placeParams struct {
	Document documentID `json:"textDocument"`
	Position position   `json:"position"`
	NewName  string     `json:"newName"`
	Range    span       `json:"range"`
	Context  struct {
		IncludeDeclaration bool     `json:"includeDeclaration"`
		Only               []string `json:"only"`
	} `json:"context"`
}

type initializeParams struct {
	Capabilities struct {
		Workspace struct {
			Watched struct {
				Registers bool `json:"dynamicRegistration"`
			} `json:"didChangeWatchedFiles"`
		} `json:"workspace"`
		TextDocument struct {
			Diagnostic *struct{} `json:"diagnostic"`
			Completion struct {
				Item struct {
					Snippets bool `json:"snippetSupport"`
				} `json:"completionItem"`
			} `json:"completion"`
		} `json:"textDocument"`
	} `json:"capabilities"`
}

type diagnostic struct {
	Range    span      `json:"range"`
	Severity int       `json:"severity"`
	Code     string    `json:"code"`
	Source   string    `json:"source"`
	Message  string    `json:"message"`
	Related  []related `json:"relatedInformation,omitempty"`
}

type related struct {
	Location location `json:"location"`
	Message  string   `json:"message"`
}

type publishParams struct {
	URI         string       `json:"uri"`
	Version     *int         `json:"version,omitempty"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

type report struct {
	Kind  string       `json:"kind"`
	Items []diagnostic `json:"items"`
}

type textEdit struct {
	Range   span   `json:"range"`
	NewText string `json:"newText"`
}

type workspaceEdit struct {
	Changes map[string][]textEdit `json:"changes"`
}

type codeAction struct {
	Title       string        `json:"title"`
	Kind        string        `json:"kind"`
	Diagnostics []diagnostic  `json:"diagnostics"`
	Preferred   bool          `json:"isPreferred,omitempty"`
	Edit        workspaceEdit `json:"edit"`
}

type markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

type completionItem struct {
	Label         string    `json:"label"`
	Kind          int       `json:"kind"`
	Detail        string    `json:"detail,omitempty"`
	Documentation *markup   `json:"documentation,omitempty"`
	SortText      string    `json:"sortText"`
	FilterText    string    `json:"filterText,omitempty"`
	Format        int       `json:"insertTextFormat,omitempty"`
	TextEdit      *textEdit `json:"textEdit"`
}

type completionList struct {
	Incomplete bool             `json:"isIncomplete"`
	Items      []completionItem `json:"items"`
}

type hover struct {
	Contents markup `json:"contents"`
	Range    span   `json:"range"`
}

type prepared struct {
	Range       span   `json:"range"`
	Placeholder string `json:"placeholder"`
}

type documentSymbol struct {
	Name      string           `json:"name"`
	Detail    string           `json:"detail,omitempty"`
	Kind      int              `json:"kind"`
	Range     span             `json:"range"`
	Selection span             `json:"selectionRange"`
	Children  []documentSymbol `json:"children,omitempty"`
}

type inlayHint struct {
	Position position `json:"position"`
	Label    string   `json:"label"`
	Tooltip  *markup  `json:"tooltip,omitempty"`
	Left     bool     `json:"paddingLeft"`
}

// kinds of completion items and of symbols, by the words of the compiler; the numbers are the
// protocol's.
var (
	itemKinds   = map[string]int{"key": 10, "verb": 2, "table": 22, "name": 6, "value": 12, "unit": 11}
	symbolKinds = map[string]int{"shop": 4, "machine": 5, "procedure": 12, "section": 3, "step": 24, "group": 3}
)
