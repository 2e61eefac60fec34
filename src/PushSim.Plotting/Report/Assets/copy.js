"use strict";
(() => {
  for (const button of document.querySelectorAll(".copy")) {
    const text = () => button.parentElement.querySelector("pre").textContent;
    const said = ok => { button.textContent = ok ? "Copied" : "Select and copy"; setTimeout(() => { button.textContent = "Copy"; }, 2000); };
    button.hidden = false;
    button.addEventListener("click", () => {
      if (navigator.clipboard) navigator.clipboard.writeText(text()).then(() => said(true), () => said(false));
      else {
        // a file opened from a folder has no clipboard of its own in every browser
        const range = document.createRange();
        range.selectNodeContents(button.parentElement.querySelector("pre"));
        getSelection().removeAllRanges();
        getSelection().addRange(range);
        said(document.execCommand("copy"));
      }
    });
  }
})();
