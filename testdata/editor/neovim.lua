-- Drives the editor service as Neovim does (0.7 or later), and writes what it saw as JSON.
-- In the environment: BENCHLEAF, the command; SHOP, a copy of the demonstration shop; SAW, the file to write.
local shop, saw = vim.env.SHOP, {}
local function wait(what, for_it)
  if not vim.wait(20000, for_it, 20) then error("waited in vain: " .. what) end
end
local ok, why = pcall(function()
  vim.cmd("edit " .. shop .. "/log-deck-gearbox-oil.toml")
  local buf = vim.api.nvim_get_current_buf()
  local id = vim.lsp.start_client({ name = "benchleaf", cmd = { vim.env.BENCHLEAF, "editor" }, root_dir = shop })
  vim.lsp.buf_attach_client(buf, id)
  local client = vim.lsp.get_client_by_id(id)
  wait("initialize", function() return client.initialized end)
  local function ask(method, params)
    local answer = client.request_sync(method, params, 20000, buf)
    if not answer or answer.err then error(method .. ": " .. vim.inspect(answer and answer.err)) end
    return answer.result
  end
  local function place(words)
    for n, line in ipairs(vim.api.nvim_buf_get_lines(buf, 0, -1, false)) do
      local _, last = string.find(line, words, 1, true)
      if last then return { line = n - 1, character = last } end
    end
    error("no line holds " .. words)
  end
  local function at(words)
    return { textDocument = { uri = vim.uri_from_bufnr(buf) }, position = place(words) }
  end
  -- A slip: found as it is typed, and mended by its quick fix.
  local slip = place('remove = "drain-plu')
  vim.api.nvim_buf_set_text(buf, slip.line, slip.character, slip.line, slip.character + 1, { "x" })
  wait("findings", function() return #vim.diagnostic.get(buf) > 0 end)
  saw.found = vim.diagnostic.get(buf, { lnum = slip.line })[1].message
  local range = { start = slip, ["end"] = slip }
  local actions = ask("textDocument/codeAction", { textDocument = { uri = vim.uri_from_bufnr(buf) }, range = range, context = { diagnostics = {} } })
  saw.fix = actions[1].title
  vim.lsp.util.apply_workspace_edit(actions[1].edit, client.offset_encoding)
  wait("no findings", function() return #vim.diagnostic.get(buf) == 0 end)
  saw.mended = vim.api.nvim_buf_get_lines(buf, slip.line, slip.line + 1, false)[1]
  -- What can stand there, and what it is.
  saw.offered = {}
  for _, item in ipairs(ask("textDocument/completion", at('remove = "drain')).items) do table.insert(saw.offered, item.label) end
  saw.hover = ask("textDocument/hover", at('tighten = "drain')).contents.value
  saw.defined = ask("textDocument/definition", at('tighten = "drain'))[1].uri
  -- Renamed over the shop, and laid out.
  local rename = at('tighten = "drain')
  rename.newName = "sump-plug"
  vim.lsp.util.apply_workspace_edit(ask("textDocument/rename", rename), client.offset_encoding)
  wait("no findings after renaming", function() return #vim.diagnostic.get(buf) == 0 end)
  saw.renamed = vim.fn.search('"sump-plug"', "nw") > 0
  vim.api.nvim_buf_set_lines(buf, 3, 3, false, { "", "", "" })
  local before = vim.api.nvim_buf_line_count(buf)
  vim.lsp.util.apply_text_edits(ask("textDocument/formatting", { textDocument = { uri = vim.uri_from_bufnr(buf) }, options = { tabSize = 2, insertSpaces = true } }), buf, client.offset_encoding)
  saw.laid = before - vim.api.nvim_buf_line_count(buf)
end)
if not ok then saw.error = tostring(why) end
vim.fn.writefile({ vim.fn.json_encode(saw) }, vim.env.SAW)
vim.cmd("qall!")
