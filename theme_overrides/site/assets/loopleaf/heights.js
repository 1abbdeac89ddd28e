/* Another height: a choice above the table of heights puts what was worked for it into its place on the page.

   Everything it shows was worked and checked when the site was built, and lies in a file beside the page that is read
   when it is asked for; charts and the picture of the whole are files that the browser fetches then. Without this
   script the table says what changes. The choice stands in the address and in the links to this pattern's other
   pages (the other terms, its sizes), and is kept in the reader's own browser. */
(() => {
  const BODY = "h3, .leaf-rounds, .leaf-telling"

  const start = () => {
    const section = document.querySelector("[data-leaf-heights]")
    if (!section) return
    const words = JSON.parse(section.dataset.words)
    const rows = [...section.querySelectorAll("[data-leaf-height]")]
    const file = section.dataset.leafHeights
    const kept = `leaf-height:${section.dataset.leafPattern}`
    const written = new Map()
    let worked = null

    const place = (name) => document.querySelector(`[data-leaf-part="${CSS.escape(name)}"]`)
    const remember = (key, nodes) => {
      if (!written.has(key)) written.set(key, nodes.map((node) => node.cloneNode(true)))
    }

    const fill = (name, nodes) => {
      const there = place(name)
      if (!there) return
      remember(name, [...there.childNodes])
      there.replaceChildren(...nodes)
    }

    // A chart is put in whole, so that it opens anew beside rounds that are new too.
    const charts = new Map()
    document.querySelectorAll("[data-leaf-chart]").forEach((figure) => {
      const piece = figure.closest(".leaf-piece").querySelector("h2").id
      charts.set(`${figure.dataset.leafChart}-${piece.slice("piece-".length)}`, figure.cloneNode(true))
    })
    const chart = (key, figure) => {
      const [kind] = key.split("-", 1)
      const name = CSS.escape(key.slice(kind.length + 1))
      const there = document.querySelector(`#piece-${name} ~ [data-leaf-chart="${kind}"]`)
      if (there && figure) there.replaceWith(figure)
    }

    // A piece's rounds and what stands between them: the rest of its section from the first of them on.
    const rounds = (name) => {
      const head = document.getElementById(`piece-${name}`)
      const all = head ? [...head.parentElement.children] : []
      const first = all.findIndex((one) => one.matches(BODY))
      return { at: head && head.parentElement, nodes: first < 0 ? [] : all.slice(first) }
    }
    const work = (name, nodes) => {
      const { at, nodes: old } = rounds(name)
      if (!at) return
      remember(`piece-${name}`, old)
      old.forEach((one) => one.remove())
      at.append(...nodes)
      for (const key of [`squares-${name}`, `chart-${name}`]) chart(key, charts.get(key) && charts.get(key).cloneNode(true))
    }

    const put = (key, nodes) => {
      if (key.startsWith("piece-")) work(key.slice("piece-".length), nodes)
      else if (/^(chart|squares)-/.test(key)) chart(key, nodes.find((node) => node.nodeName === "FIGURE"))
      else fill(key, nodes)
    }
    const copies = (nodes) => [...nodes].map((node) => node.cloneNode(true))

    const parts = (html) => [...document.createRange().createContextualFragment(html).childNodes]

    const show = (height, changed) => {
      written.forEach((nodes, key) => put(key, copies(nodes)))
      Object.entries(changed || {}).forEach(([key, html]) => put(key, parts(html)))
      const row = rows.find((one) => one.dataset.leafHeight === height)
      rows.forEach((one) => one.removeAttribute("aria-current"))
      row.setAttribute("aria-current", "true")
      told.textContent = changed ? words.kept.replace("{label}", row.cells[0].textContent.toLowerCase()) : ""
      choice.value = height
      carry(height)
      section.open = section.open || Boolean(changed)
      document.dispatchEvent(new Event("leaf-rounds"))
    }

    const choose = async (height) => {
      if (height === "0") return show("0")
      try {
        choice.value = height
        worked = worked || (await (await fetch(file)).json())
        if (choice.value === height) show(height, worked[height])
      } catch {
        show("0")
        told.textContent = words.lost
      }
    }

    const choice = document.createElement("select")
    rows.forEach((row) => choice.add(new Option(row.cells[0].textContent, row.dataset.leafHeight)))
    const label = document.createElement("label")
    label.append(`${words.choose} `, choice)
    const told = document.createElement("p")
    told.setAttribute("role", "status")
    const control = document.createElement("div")
    control.className = "leaf-heights"
    control.append(label, told)
    section.querySelector("table").before(control)

    // To the pattern's other pages by their links, and to whom the address is sent.
    const carry = (height) => {
      const links = document.querySelectorAll(".leaf-terms__other, .leaf-round__other a, [data-leaf-size-pages] a")
      links.forEach((link) => (link.search = height === "0" ? "" : `?height=${height}`))
      const here = new URL(location)
      if (height === "0") here.searchParams.delete("height")
      else here.searchParams.set("height", height)
      if (here.href !== location.href) history.replaceState(history.state, "", here)
    }

    const offered = (height) => rows.some((row) => row.dataset.leafHeight === height)
    const remembered = () => {
      const asked = new URLSearchParams(location.search).get("height")
      if (offered(asked)) return asked
      try {
        return localStorage.getItem(kept)
      } catch {
        return null
      }
    }
    const keep = (height) => {
      try {
        if (height === "0") localStorage.removeItem(kept)
        else localStorage.setItem(kept, height)
      } catch {
        // Where nothing may be kept the choice holds until the page is left.
      }
    }

    choice.addEventListener("change", () => {
      keep(choice.value)
      choose(choice.value)
    })
    const before = remembered()
    if (offered(before) && before !== "0") {
      keep(before)
      // The round in the address may be there only now.
      choose(before).then(() => {
        const named = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)))
        if (named) named.scrollIntoView()
      })
    } else show("0")
  }
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start)
  else start()
})()
