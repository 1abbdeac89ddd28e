/* Drawings that stand in the page, for the hand that the reader chooses: all of them turn at once, and the charts
   with them.

   Without this script each says that it is drawn for a right hand, and what a left-hander sees. */
(() => {
  let left = false

  // The drawing and the other hand's, kept in the template beside it, change places.
  const turn = (kept) => {
    const shown = kept.previousElementSibling
    const other = kept.content.firstElementChild
    shown.replaceWith(other)
    kept.content.append(shown)
    kept.toggleAttribute("data-turned", left)
  }

  const choice = (note) => {
    const button = document.createElement("button")
    button.type = "button"
    button.className = "leaf-hand"
    button.dataset.leafHands = ""
    Object.assign(button.dataset, { left: note.dataset.left, right: note.dataset.right })
    button.addEventListener("click", () => document.dispatchEvent(new CustomEvent("leaf-hand", { detail: !left })))
    note.replaceWith(button)
  }

  const show = () => {
    document.querySelectorAll("span[data-leaf-hands]").forEach(choice)
    document.querySelectorAll("template[data-leaf-left]").forEach((kept) => {
      if (kept.hasAttribute("data-turned") !== left) turn(kept)
    })
    // The sides that sentences name; a chart turns those of its own key.
    document.querySelectorAll("[data-other-hand]").forEach((one) => {
      if (one.closest("[data-leaf-chart]") || one.hasAttribute("data-turned") === left) return
      ;[one.textContent, one.dataset.otherHand] = [one.dataset.otherHand, one.textContent]
      one.toggleAttribute("data-turned", left)
    })
    document.querySelectorAll("button[data-leaf-hands]").forEach((button) => {
      button.textContent = left ? button.dataset.right : button.dataset.left
    })
  }

  const start = () => {
    if (!window.HTMLTemplateElement) return
    show()
    document.addEventListener("leaf-hand", (event) => {
      left = event.detail
      show()
    })
    // At another height there are other drawings.
    document.addEventListener("leaf-rounds", show)
  }
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start)
  else start()
})()
