"""What is needed at hand: yarns, hooks, gauge, and the sizes of what is made."""

from collections.abc import Iterator, Sequence

from .. import trade
from ..measure import Band, Measured, StatedSize, YarnNeed, amounts
from ..pattern import Gauge, Length, Lengths, Pattern, Weight
from ..pattern import Yarn as OwnYarn
from .leaflet_parts import Fact, Hook, Size, Yarn
from .leaflet_rounds import labelled
from .leaflet_tables import size_word
from .leaflet_voice import Voice, hook_size, per_size, sentence


def yarns(voice: Voice, measured: Measured) -> tuple[Yarn, ...]:
    """The yarns with the country's own weight names, metres and yards, grams and ounces."""
    needs = {
        letter: [next((need for need in size if need.yarn == letter), None) for size in measured.yarn]
        for letter in voice.pattern.materials.yarns
    }
    return tuple(
        Yarn(
            letter,
            voice.yarn(letter),
            weight_name(voice, yarn),
            yarn.colour,
            voice.prose(yarn.fibre),
            _amount(yarn, needs[letter], voice.pattern.sizes),
            _balls(voice, yarn, needs[letter]),
        )
        for letter, yarn in voice.pattern.materials.yarns.items()
    )


def weight_name(voice: Voice, yarn: OwnYarn) -> str:
    """`worsted (4)` in US, `aran (4)` in UK; "" where the weight isn't said."""
    row = next((row for row in trade.yarn_weights() if row.number == yarn.weight), None)
    return f"{row.names(voice.terms)[0]} ({row.number})" if row else ""


def _amount(yarn: OwnYarn, needs: Sequence[YarnNeed | None], sizes: Sequence[str]) -> str:
    """As weighed by the author, else as estimated, size by size where the sizes differ."""
    if yarn.weighed:
        grams = [one.grams for one in yarn.weighed if isinstance(one, Weight)]
        metres = [one.mm / 1000 for one in yarn.weighed if isinstance(one, Length)]
        ball = yarn.ball
        if grams and ball and ball.weight_grams and ball.length_metres:
            metres = [gram * ball.length_metres / ball.weight_grams for gram in grams]
        return ", ".join(
            ([_each([amounts.weight(gram) for gram in grams])] if grams else [])
            + ([_each([amounts.metres(metre) for metre in metres])] if metres else [])
        )
    known = [need for need in needs if need is not None]
    texts = [
        ", ".join(
            ([amounts.about_grams(need.grams)] if need.grams else [])
            + ([amounts.about_metres(need.metres)] if need.metres else [])
        )
        for need in known
    ]
    told = list(dict.fromkeys(text for text in texts if text))
    if len(told) > 1 and len(texts) == len(sizes):
        return "; ".join(f"{size}: {text}" for size, text in zip(sizes, texts, strict=True) if text)
    return " / ".join(told)


def _each(texts: Sequence[str]) -> str:
    """`64 (70, 76) g, 2¼ (2½, 2¾) oz` from `64 g (2¼ oz)` and so on; a single one as it is."""
    if len(texts) == 1:
        return texts[0]
    pairs = [text.removesuffix(")").split(" (") for text in texts]
    rows = []
    for side in (0, 1):
        numbers, units = zip(*(pair[side].rsplit(" ", 1) for pair in pairs), strict=True)
        rows.append(f"{per_size(numbers)} {units[0]}")
    return ", ".join(rows)


def _balls(voice: Voice, yarn: OwnYarn, needs: Sequence[YarnNeed | None]) -> str:
    ball = yarn.ball
    if ball is None:
        return ""
    holds = [amounts.weight(ball.weight_grams)] if ball.weight_grams else []
    holds += [amounts.metres(ball.length_metres)] if ball.length_metres else []
    numbers = [str(need.balls[1]) for need in needs if need is not None and need.balls]
    if not holds or not numbers:
        return ""
    number = per_size(numbers)
    return voice.say("one_ball" if number == "1" else "balls", number=number, ball=", ".join(holds))


def hooks(voice: Voice) -> tuple[Hook, ...]:
    """The hooks, millimetres first."""
    return tuple(
        Hook(
            hook_size(voice, hook.size.mm),
            voice.say("hook_for", use=voice.prose(hook.for_)) if hook.for_ else "",
        )
        for hook in voice.pattern.materials.hook
    )


def gauges(voice: Voice) -> tuple[str, ...]:
    """The gauge, a line each."""
    if voice.pattern.gauge_not_critical:
        return (voice.words["gauge_not_critical"],)
    return tuple(_gauge(voice, one) for one in voice.pattern.gauge)


def _gauge(voice: Voice, gauge: Gauge) -> str:
    if gauge.across is not None:
        across = _typed(gauge.across)
        if gauge.rounds is not None:
            last = gauge.rounds.last if gauge.rounds.last is not None else gauge.rounds.first
            rounds = labelled(voice, "round", str(gauge.rounds.first), str(last))
            return voice.say("gauge_rounds", rounds=rounds, across=across)
        return voice.say("gauge_across", piece=voice.named(gauge.piece), across=across)
    stitches = f"{gauge.stitches:g} {voice.stitch(gauge.stitch or 'st')}" if gauge.stitches else ""
    piece = voice.pattern.pieces.get(gauge.piece) or next(iter(voice.pattern.pieces.values()))
    key = "gauge_rows" if piece.worked.startswith("rows") else "gauge_rounds_too"
    if gauge.rows and stitches:
        stitches = voice.say(key, stitches=stitches, rows=f"{gauge.rows:g}")
    elif gauge.rows:
        stitches = voice.say("gauge_rows_only", rows=f"{gauge.rows:g}")
    blocked = {None: "", True: voice.words["blocked"], False: voice.words["not_blocked"]}[gauge.blocked]
    over = _typed(gauge.over) if gauge.over else ""
    return voice.say("gauge_over", stitches=stitches, over=over, blocked=blocked)


def _typed(length: Length) -> str:
    """One length as the author typed it, and in the other family."""
    return amounts.stated(Lengths((length,)))


def made(voice: Voice) -> str:
    """What you make: `1 pouch, 2 drawstrings, 1 moon`."""
    texts = []
    for name, piece in voice.pattern.pieces.items():
        text = voice.pieces(name, piece.make)
        for step in voice.pattern.finishing:
            if step.lay_out is not None and step.lay_out.piece == name:
                text = voice.say("laid_out", pieces=text, across=step.lay_out.across, down=step.lay_out.down)
        texts.append(text)
    return ", ".join(texts)


def sizes(voice: Voice, measured: Measured) -> tuple[Size, ...]:
    """What the sizes are called, the finished sizes, whom they fit, and the time for two makers."""
    pattern = voice.pattern
    found: list[Size] = []
    if pattern.sizes:
        found.append(Size(voice.words["sizes"], (per_size(pattern.sizes),)))
    for piece in dict.fromkeys(one.piece for one in measured.stated):
        lines = [_stated(voice, measured, one) for one in measured.stated if one.piece == piece]
        of = f", {voice.title(piece)}" if piece else ""
        found.append(Size(voice.words["size"] + of, tuple(lines)))
    fits = [f"{voice.prose(part)} {_fit(value)}" for part, value in _fits(pattern)]
    if fits:
        found.append(Size(voice.words["to_fit"], tuple(fits)))
    return (*found, *_time(voice, measured))


def _time(voice: Voice, measured: Measured) -> Iterator[Size]:
    """Of the size that takes longest, named where there are several."""
    longest = max(range(len(measured.hours)), key=lambda size: measured.hours[size].practised.high)
    hours = measured.hours[longest]
    if hours.practised.high:
        of = f", {voice.pattern.sizes[longest]}" if len(voice.pattern.sizes) > 1 else ""
        practised, learning = amounts.about_hours(hours.practised), amounts.about_hours(hours.learning)
        said = voice.say("time_for_both", practised=practised, learning=learning)
        yield Size(voice.words["time"] + of, (said,))


def _fits(pattern: Pattern) -> Iterator[tuple[str, Lengths | str]]:
    yield from pattern.to_fit.items()
    for piece in pattern.pieces.values():
        yield from piece.to_fit.items()


def _fit(value: Lengths | str) -> str:
    if isinstance(value, str):
        return value
    return amounts.lengths(tuple(None if one is None else one.mm for one in value.sizes))


def _stated(voice: Voice, measured: Measured, size: StatedSize) -> str:
    word = voice.words[size_word(measured, size.piece, size.what)]
    return f"{amounts.stated(size.lengths, voice.pattern.size_count)} {word}"


def _size_in_short(voice: Voice, measured: Measured) -> str:
    """The whole's size; where only pieces have one, that of the largest, with its name: `String: 128 cm (50½
    in) wide`.
    """
    whole = [one for one in measured.stated if not one.piece]
    if whole or not measured.stated:
        return ", ".join(_stated(voice, measured, one) for one in whole)
    largest = max(measured.stated, key=lambda one: one.mm(voice.pattern.size_count - 1) or 0.0).piece
    own = [_stated(voice, measured, one) for one in measured.stated if one.piece == largest]
    return f"{voice.title(largest)}: {', '.join(own)}"


def facts(voice: Voice, measured: Measured, level: str) -> tuple[Fact, ...]:
    """The strip of facts: short, but with centimetres and inches as everywhere."""
    w = voice.words
    size = _size_in_short(voice, measured)
    weights = list(dict.fromkeys(weight_name(voice, yarn) for yarn in voice.pattern.materials.yarns.values()))
    yarn = sentence(", ".join(weight for weight in weights if weight))
    number = len(voice.pattern.materials.yarns)
    if yarn and number > 1:
        yarn = voice.say("colors", weight=yarn, number=number)
    hook = ", ".join(hook_size(voice, hook.size.mm) for hook in voice.pattern.materials.hook)
    practised = [one.practised for one in measured.hours]  # from the quickest size to the longest
    hours = Band(min(one.low for one in practised), max(one.high for one in practised))
    time = sentence(amounts.about_hours(hours)) if hours.high else ""
    all_facts = [
        Fact(w["size_short"], size, "size"),
        Fact(w["level"], sentence(level), "level"),
        Fact(w["hooks"] if len(voice.pattern.materials.hook) > 1 else w["hook"], hook, "hook"),
        Fact(w["yarn"], yarn, "yarn"),
        Fact(w["time"], time, "time"),
    ]
    return tuple(fact for fact in all_facts if fact.value)
