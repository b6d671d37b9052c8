-- Run inside Neovim with the page's init.lua: a finding, a remedy, a renaming.
local function fail(why)
  io.stderr:write("neovim: " .. why .. "\n")
  vim.cmd("cquit 1")
end

local function finds(code)
  for _, d in ipairs(vim.diagnostic.get(nil)) do
    local item = d.user_data and d.user_data.lsp or {}
    if d.code == code or item.code == code then
      return d
    end
  end
end

local function wait(what, holds)
  if not vim.wait(30000, holds, 50) then
    fail(what .. ": " .. vim.inspect(vim.diagnostic.get(nil)))
  end
  print("  " .. what .. "\n")
end

local ok, err = pcall(function()
  vim.cmd("edit table.hcl")
  vim.cmd("edit shared/tide.toml")
  wait("a finding in the file that the design uses", function()
    return finds("unequal-module") ~= nil
  end)

  local found = finds("unequal-module")
  local params = {
    textDocument = vim.lsp.util.make_text_document_params(0),
    range = {
      start = { line = found.lnum, character = found.col },
      ["end"] = { line = found.end_lnum, character = found.end_col },
    },
    context = { diagnostics = vim.lsp.diagnostic.get_line_diagnostics(0, found.lnum) },
  }
  local answers = vim.lsp.buf_request_sync(0, "textDocument/codeAction", params, 10000)
  local remedy
  for _, answer in pairs(answers or {}) do
    for _, action in ipairs(answer.result or {}) do
      if action.edit and not action.title:lower():find("waive") then
        remedy = remedy or action
      end
    end
  end
  if not remedy then
    fail("no remedy is offered: " .. vim.inspect(answers))
  end
  vim.lsp.util.apply_workspace_edit(remedy.edit, "utf-16")
  wait("the remedy takes the finding away: " .. remedy.title, function()
    return finds("unequal-module") == nil
  end)

  vim.cmd("edit! table.hcl")
  vim.fn.search("second")
  local rename = vim.lsp.util.make_position_params(0, "utf-16")
  rename.newName = "tide_wheel"
  answers = vim.lsp.buf_request_sync(0, "textDocument/rename", rename, 10000)
  for _, answer in pairs(answers or {}) do
    if answer.result then
      vim.lsp.util.apply_workspace_edit(answer.result, "utf-16")
    end
  end
  if vim.fn.search("tide_wheel", "wn") == 0 then
    fail("not renamed in the design: " .. vim.inspect(answers))
  end
  vim.cmd("buffer shared/tide.toml")
  if vim.fn.search("wheel.tide_wheel", "wn") == 0 then
    fail("not renamed in the file it uses: " .. vim.inspect(answers))
  end
  print("  renamed in both files\n")
end)
if not ok then
  fail(err)
end
vim.cmd("qall!")
