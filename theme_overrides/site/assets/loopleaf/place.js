/* Opens the search at its word.

   Keeps the reader's place: the link to the other terms leads to the round at the top of the window (or the one
   in the address), and the bar at the top of a phone names the piece. Without this script the links lead to the
   top of the other page, and each round still has a link to itself in the other terms. */
(() => {
  const search = () => {
    document.querySelectorAll("[data-leaf-search]").forEach((word) => {
      word.addEventListener("click", () => document.getElementById("__search").click())
    })
  }

  // On the glossary: the same word in the other terms.
  const keepWord = (links) => {
    const plain = links.map((link) => link.getAttribute("href"))
    const follow = () => links.forEach((link, i) => link.setAttribute("href", plain[i] + location.hash))
    addEventListener("hashchange", follow)
    follow()
  }

  const start = () => {
    search()
    const rounds = () => [...document.querySelectorAll("[data-leaf-round]")]
    const links = [...document.querySelectorAll(".leaf-terms__other")]
    if (!rounds().length) return keepWord(links)
    if (!links.length) return
    const pieces = [...document.querySelectorAll("[data-leaf-name]")]
    const name = document.querySelector("[data-leaf-piece]")
    const title = name.textContent
    const line = 96

    const above = (list, edge) => list.filter((one) => one.getBoundingClientRect().top <= edge).pop()
    const inView = (one) => {
      const box = one.getBoundingClientRect()
      return box.bottom > 0 && box.top < window.innerHeight
    }

    const place = () => {
      const named = document.querySelector(":target")
      if (named && named.closest("[data-leaf-round]") && inView(named.closest("[data-leaf-round]"))) return named.id
      const current = rounds().find((one) => one.getBoundingClientRect().bottom > line)
      if (!current || !above(pieces, line)) return ""
      return inView(current) ? current.id : ""
    }

    let waiting = false
    const follow = () => {
      waiting = false
      const id = place()
      links.forEach((link) => (link.hash = id))
      const piece = above(pieces, line)
      name.textContent = piece ? piece.dataset.leafName : title
    }
    const soon = () => {
      if (!waiting) waiting = requestAnimationFrame(follow)
    }
    addEventListener("scroll", soon, { passive: true })
    addEventListener("resize", soon)
    addEventListener("hashchange", soon)
    document.addEventListener("leaf-rounds", soon)
    follow()
  }
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start)
  else start()
})()
