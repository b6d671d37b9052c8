;;; Run in batch with the page's init.el: a finding, a remedy, a renaming. -*- lexical-binding: t -*-
(require 'cl-lib)
(require 'eglot)

(defun run-wait (what holds)
  "Wait until HOLDS is true, and say WHAT."
  (let ((late (+ (float-time) 40)))
    (while (not (funcall holds))
      (when (> (float-time) late)
        (message "emacs: %s: did not happen" what)
        (kill-emacs 1))
      (accept-process-output nil 0.1))
    (message "  %s" what)))

(defvar run-published (make-hash-table :test #'equal)
  "Findings by file name, as the server published them.")

(cl-defmethod eglot-handle-notification :before
  (_server (_method (eql textDocument/publishDiagnostics)) &key uri diagnostics &allow-other-keys)
  (puthash (file-truename (eglot--uri-to-path uri)) diagnostics run-published))

(defvar run-folder default-directory)

(defun run-finding (file code)
  "The finding of CODE in FILE, nil if there is none."
  (cl-find code (gethash (file-truename (expand-file-name file run-folder)) run-published)
           :test #'equal :key (lambda (d) (plist-get d :code))))

(setq eglot-sync-connect 20
      eglot-confirm-server-initiated-edits nil
      eglot-autoshutdown nil
      make-backup-files nil)

(let ((table (find-file-noselect "table.hcl"))
      (tide (find-file-noselect "shared/tide.toml")))
  (dolist (buffer (list table tide))
    (with-current-buffer buffer
      ;; In batch no command runs after the file is opened, which starts it else.
      (unless (eglot-managed-p)
        (apply #'eglot (append (butlast (eglot--guess-contact) 0) nil)))
      (flymake-start)))
  (run-wait "a finding in the file that the design uses"
            (lambda () (run-finding "shared/tide.toml" "unequal-module")))
  (with-current-buffer tide
    (let (remedy)
      ;; Opening the second file clears what was found until it is found again.
      (run-wait "a remedy is offered"
                (lambda ()
                  (let ((finding (run-finding "shared/tide.toml" "unequal-module")))
                    (when finding
                      (setq remedy
                            (cl-find-if (lambda (a) (and (plist-get a :edit)
                                                         (not (string-match-p "aive" (plist-get a :title)))))
                                        (jsonrpc-request
                                         (eglot-current-server) :textDocument/codeAction
                                         (list :textDocument (eglot--TextDocumentIdentifier)
                                               :range (plist-get finding :range)
                                               :context (list :diagnostics (vector finding))))))))))
      (eglot--apply-workspace-edit (plist-get remedy :edit))
      (eglot--signal-textDocument/didChange)
      (with-current-buffer table (eglot--signal-textDocument/didChange))
      (run-wait (format "the remedy takes the finding away: %s" (plist-get remedy :title))
                (lambda () (not (run-finding "shared/tide.toml" "unequal-module"))))))
  (with-current-buffer table
    (goto-char (point-min))
    (search-forward "sec")
    (eglot-rename "tide_wheel")
    (goto-char (point-min))
    (unless (search-forward "\"tide_wheel\"" nil t)
      (message "emacs: not renamed in the design")
      (kill-emacs 1)))
  (with-current-buffer tide
    (goto-char (point-min))
    (unless (search-forward "[wheel.tide_wheel]" nil t)
      (message "emacs: not renamed in the file it uses")
      (kill-emacs 1)))
  (message "  renamed in both files"))
(kill-emacs 0)
