/* Reading along: a round chosen in the text lights up in the chart, and one chosen in the chart is marked in the
   text. The chart can be made larger and moved about, and kept in view while one reads on.

   Without this script the chart is a picture that opens by itself, and all rounds stand in words. */
(() => {
  const NEAR = 40 // pixels: a finger's width
  const STEP = 1.5
  const LARGEST = 12
  const THINNEST = 0.8 // pixels: strokes of a chart that is shown small are drawn no thinner
  const USUAL = 0.9 // the width of its strokes in the chart's own units
  const THICKEST = 1.7

  const start = () => {
    const charts = () => document.querySelectorAll("[data-leaf-chart]")
    if (!charts().length || !window.fetch || !window.IntersectionObserver) return
    const seen = new IntersectionObserver((entries) => {
      entries.filter((one) => one.isIntersecting).forEach((one) => {
        seen.unobserve(one.target)
        if (!opened.has(one.target)) open(one.target)
        opened.add(one.target)
      })
    }, { rootMargin: "600px" })
    const watch = () => charts().forEach((chart) => seen.observe(chart))
    watch()
    // At another height there are other charts.
    document.addEventListener("leaf-rounds", watch)
    document.addEventListener("leaf-hand", (event) => { left = event.detail })
  }

  // The drawing itself in the picture's place, its ids made its own: several drawings share a page.
  let drawn = 0
  let left = false // the hand that the reader chose last
  const opened = new WeakSet()
  const answered = new WeakSet() // clicks on a round that one of its piece's drawings has answered for all
  const drawing = async (address, alt) => {
    const answer = await fetch(address)
    if (!answer.ok) throw new Error(answer.statusText)
    const own = `chart${drawn++}-`
    const text = (await answer.text()).replace(/ id="/g, ` id="${own}`).replace(/href="#/g, `href="#${own}`)
    const svg = new DOMParser().parseFromString(text, "image/svg+xml").documentElement
    if (svg.nodeName !== "svg") throw new Error("not a drawing")
    svg.setAttribute("role", "img")
    svg.setAttribute("aria-label", alt)
    svg.querySelectorAll("title, desc").forEach((one) => one.remove())
    return document.importNode(svg, true)
  }

  // The key stands below in the page's own words; without it the signs have the whole width.
  const bare = (svg) => {
    const key = svg.querySelector(".chart-key")
    if (key) {
      key.remove()
      const box = svg.getBBox()
      svg.setAttribute("viewBox", [box.x - 4, box.y - 4, box.width + 8, box.height + 8].join(" "))
    }
    const { width, height } = svg.viewBox.baseVal
    svg.style.setProperty("--ratio", width / height)
    svg.style.setProperty("--units", width)
  }

  // A chart that opens above what has the focus would push it out of view: scrolls by as much as it was moved.
  const staying = () => {
    const focused = document.activeElement
    if (!focused || focused === document.body) return () => {}
    const { top, bottom } = focused.getBoundingClientRect()
    if (bottom <= 0 || top >= innerHeight) return () => {}
    return () => scrollBy({ top: focused.getBoundingClientRect().top - top, behavior: "instant" })
  }

  const open = async (figure) => {
    const image = figure.querySelector("img")
    const hand = figure.querySelector("[data-leaf-hand]")
    const words = JSON.parse(figure.dataset.words)
    const alt = image.alt
    let address = image.getAttribute("src")
    const turn = () => {
      const other = hand.getAttribute("href")
      hand.setAttribute("href", address)
      hand.textContent = hand.textContent === words.left ? words.right : words.left
      address = other
      figure.querySelectorAll("[data-other-hand]").forEach((one) => {
        [one.textContent, one.dataset.otherHand] = [one.dataset.otherHand, one.textContent]
      })
    }
    if (hand && left) turn()
    let svg
    try {
      svg = await drawing(address, alt)
    } catch {
      return // the picture stays
    }
    const view = figure.querySelector(".leaf-chart__view")
    const settle = staying()
    view.replaceChildren(svg)
    bare(svg)
    const piece = figure.closest(".leaf-piece")
    const rounds = [...piece.querySelectorAll("[data-leaf-round]")]
    const order = [...new Set(rounds.flatMap((one) => one.dataset.leafRound.split(" ")))]
    const drawnRounds = () => [...new Set([...svg.querySelectorAll("[data-round]")].map((one) => one.dataset.round))]
    let chosen = ""
    let zoom = 1

    const bar = document.createElement("div")
    bar.className = "leaf-chart__bar"
    const button = (word, act) => {
      const made = document.createElement("button")
      made.type = "button"
      made.textContent = word
      made.addEventListener("click", act)
      bar.append(made)
      return made
    }
    const said = document.createElement("p")
    said.className = "leaf-chart__said"
    said.setAttribute("role", "status")

    // ---- one round ----

    // Every sign says its round; what lights up are the groups that they stand in.
    const groups = (label) => svg.querySelectorAll(`g[data-round="${CSS.escape(label)}"]:not([data-kind])`)

    // A round that only other sizes have is in the words and not in the chart.
    const isDrawn = (label) => groups(label).length > 0

    const roundOf = (label) => rounds.find((one) => one.dataset.leafRound.split(" ").includes(label))

    const show = () => {
      svg.classList.toggle("has-chosen", chosen !== "" && isDrawn(chosen))
      svg.querySelectorAll(".is-chosen").forEach((one) => one.classList.remove("is-chosen"))
      if (chosen) groups(chosen).forEach((one) => one.classList.add("is-chosen"))
      rounds.forEach((one) => {
        const mine = one === roundOf(chosen)
        one.classList.toggle("leaf-round--chosen", mine)
        if (mine) one.setAttribute("aria-current", "true")
        else one.removeAttribute("aria-current")
      })
      tell()
    }

    const tell = () => {
      const round = roundOf(chosen)
      if (!round) return said.replaceChildren(words.hint)
      const link = document.createElement("a")
      link.href = `#${round.id}`
      link.textContent = `${words.one} ${chosen}`
      const count = round.querySelector(".leaf-round__count")
      said.replaceChildren(link, ` ${round.querySelector(".leaf-round__text").textContent.trim()}`, count ? ` (${count.textContent.trim()})` : "", isDrawn(chosen) ? "" : `. ${words.undrawn}`)
    }

    // A piece's chart and its picture in squares light up together.
    const choose = (label) => piece.dispatchEvent(new CustomEvent("leaf-chosen", { detail: label }))
    piece.addEventListener("leaf-chosen", (event) => {
      if (!figure.isConnected) return
      chosen = event.detail
      show()
      into()
    })

    // Moves the view so far that the round's beginning can be seen; the page stays where it is.
    const into = () => {
      const first = svg.querySelector(".is-chosen [data-kind]") || svg.querySelector(".is-chosen")
      if (!first || zoom === 1) return
      const box = view.getBoundingClientRect()
      const sign = first.getBoundingClientRect()
      const [x, y] = [sign.left + sign.width / 2 - box.left, sign.top + sign.height / 2 - box.top]
      if (x < 0 || x > box.width) view.scrollLeft += x - box.width / 2
      if (y < 0 || y > box.height) view.scrollTop += y - box.height / 2
    }

    const step = (by) => {
      const there = drawnRounds()
      const at = chosen ? order.indexOf(chosen) : by > 0 ? -1 : order.length
      const ahead = (by > 0 ? order.slice(at + 1) : order.slice(0, at).reverse()).find((label) => there.includes(label))
      if (ahead) choose(ahead)
    }

    rounds.forEach((round) => round.addEventListener("click", (event) => {
      const link = event.target.closest("a, button, input, label, select")
      if (link && !link.classList.contains("leaf-round__number")) return
      if (!link && String(getSelection())) return // words are being picked up, not the round
      if (answered.has(event)) return
      answered.add(event)
      const labels = round.dataset.leafRound.split(" ")
      choose(labels.includes(chosen) && !link ? "" : labels[0])
    }))

    // The sign under the finger, or the nearest one.
    const nearest = (event) => {
      const hit = event.target.closest("[data-round]")
      if (hit) return hit.dataset.round
      let best = null
      let least = NEAR
      svg.querySelectorAll("[data-kind]").forEach((one) => {
        const box = one.getBoundingClientRect()
        const away = Math.hypot(box.left + box.width / 2 - event.clientX, box.top + box.height / 2 - event.clientY)
        if (away < least) [best, least] = [one, away]
      })
      return best ? best.closest("[data-round]").dataset.round : ""
    }

    const listen = () => svg.addEventListener("click", (event) => {
      if (moved) return
      const label = nearest(event)
      choose(label === chosen || !roundOf(label) ? "" : label)
    })

    // ---- larger and smaller: the middle of the view stays the middle ----

    // How much larger than whole the chart is when it is as wide as the view.
    const filling = () => {
      const { width, height } = svg.viewBox.baseVal
      return Math.max(1, (view.clientWidth * height) / (parseFloat(getComputedStyle(view).maxHeight) * width))
    }

    const enlarge = (by) => {
      const [across, down] = [view.scrollWidth, view.scrollHeight]
      const [x, y] = [(view.scrollLeft + view.clientWidth / 2) / across, (view.scrollTop + view.clientHeight / 2) / down]
      zoom = Math.min(Math.max(by ? zoom * by : 1, 1), LARGEST * filling())
      figure.style.setProperty("--zoom", zoom)
      figure.classList.toggle("leaf-chart--large", zoom > 1)
      // Not `disabled`: that would take the focus from the one who has just pressed it.
      for (const button of [smaller, whole]) button.setAttribute("aria-disabled", zoom === 1)
      larger.setAttribute("aria-disabled", zoom === LARGEST * filling())
      if (zoom > 1) {
        view.tabIndex = 0
        view.setAttribute("role", "region")
        view.setAttribute("aria-label", words.name)
      } else {
        for (const name of ["tabindex", "role", "aria-label"]) view.removeAttribute(name)
      }
      weigh()
      view.scrollTo(x * view.scrollWidth - view.clientWidth / 2, y * view.scrollHeight - view.clientHeight / 2)
    }

    const weigh = () => {
      const unit = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width
      if (!unit) return
      const wide = Math.min(Math.max(USUAL, THINNEST / unit), THICKEST)
      svg.style.strokeWidth = wide
      // Heavier strokes tell yarns apart: they stay so many times as wide.
      svg.querySelectorAll("g[data-round][stroke-width]").forEach((one) => {
        one.style.strokeWidth = (one.getAttribute("stroke-width") / USUAL) * wide
      })
    }
    new ResizeObserver(weigh).observe(view)

    // A mouse moves a large chart by dragging; a finger and the arrow keys scroll it by themselves.
    let from = null
    let moved = false
    view.addEventListener("pointerdown", (event) => {
      moved = false
      if (event.pointerType === "mouse" && zoom > 1) from = [event.clientX, event.clientY, view.scrollLeft, view.scrollTop]
    })
    addEventListener("pointermove", (event) => {
      if (!from) return
      const [dx, dy] = [event.clientX - from[0], event.clientY - from[1]]
      if (Math.hypot(dx, dy) > 4) moved = true
      if (moved) view.scrollTo(from[2] - dx, from[3] - dy)
    })
    addEventListener("pointerup", () => { from = null })

    button(words.before, () => step(-1))
    button(words.after, () => step(1))
    const smaller = button(words.smaller, () => enlarge(1 / STEP))
    const larger = button(words.larger, () => enlarge(STEP))
    const whole = button(words.whole, () => enlarge(0))
    const keep = (is) => {
      figure.classList.toggle("leaf-chart--kept", is)
      kept.setAttribute("aria-pressed", is)
    }
    const kept = button(words.kept, () => {
      const is = !figure.classList.contains("leaf-chart--kept")
      piece.dispatchEvent(new Event("leaf-kept")) // one at a time
      keep(is)
    })
    piece.addEventListener("leaf-kept", () => keep(false))
    keep(false)
    figure.addEventListener("keydown", (event) => {
      if (event.key === "Escape" && chosen) choose("")
    })

    // The other hand's chart in this one's place, and in all others'; its link still opens it by itself in
    // another tab.
    if (hand) {
      hand.addEventListener("click", (event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey) return
        event.preventDefault()
        asked = true
        document.dispatchEvent(new CustomEvent("leaf-hand", { detail: hand.textContent === words.left }))
      })
      let asked = false
      let turning = Promise.resolve()
      document.addEventListener("leaf-hand", () => { turning = turning.then(toHand) })
      const toHand = async () => {
        if (!figure.isConnected || (hand.textContent === words.right) === left) return
        const other = hand.getAttribute("href")
        try {
          const turned = await drawing(other, alt)
          svg.replaceWith(turned)
          bare(turned)
          svg = turned
        } catch {
          if (asked) location.href = other
          return
        } finally {
          asked = false
        }
        turn()
        weigh()
        listen()
        show()
      }
      turning = turning.then(toHand) // a hand chosen while this one was fetched
    }

    listen()
    enlarge(0)
    if (view.classList.contains("leaf-chart__view--long")) {
      enlarge(filling())
      view.scrollTo(0, view.scrollHeight) // where it begins
    }
    view.after(bar, said)
    const named = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)))
    const round = named && named.closest("[data-leaf-round]")
    if (round && rounds.includes(round)) chosen = round.id === named.id ? round.dataset.leafRound.split(" ")[0] : named.id.slice(round.id.lastIndexOf("-") + 1)
    show()
    into()
    settle()
  }

  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start)
  else start()
})()
