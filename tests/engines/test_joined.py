from language_tool_python import Match as ToolMatch

from proofkit.engines.joined import batches, joined


def _found(text: str, words: str, *, suggestions: tuple[str, ...] = ()) -> ToolMatch:
    """A remark on some words, as the engine sends it: places in UTF-16 units."""
    at = len(text[: text.index(words)].encode("utf-16-le")) // 2
    return ToolMatch(
        {
            "offset": at,
            "length": len(words.encode("utf-16-le")) // 2,
            "message": "",
            "replacements": [{"value": value} for value in suggestions],
            "context": {"text": "", "offset": 0},
            "rule": {"id": "RULE", "issueType": "grammar", "category": {"id": "GRAMMAR"}},
        },
        text,
    )


def test_remarks_come_back_to_their_own_text() -> None:
    (request,) = joined(["A cat sat.", "", "The dog run."])
    ((number, remark),) = request.remarks([_found(request.text, "run")])
    assert (number, remark.start, remark.end) == (2, 8, 11)


def test_places_are_exact_beside_signs_of_two_units() -> None:
    text = "🦊🦊 The fox 🦊 run away."
    (request,) = joined([text])
    ((_, remark),) = request.remarks([_found(request.text, "run")])
    assert text[remark.start : remark.end] == "run"


def test_a_suggestion_that_would_change_such_a_sign_is_left_out() -> None:
    text = "The fox 🦊 run."
    (request,) = joined([text])
    found = _found(request.text, request.text[8:13], suggestions=(request.text[8:13], "runs"))
    ((_, remark),) = request.remarks([found])
    assert remark.replacements == ("runs",)


def test_a_remark_across_two_texts_is_left_out() -> None:
    (request,) = joined(["He ran to the", "the house."])
    assert list(request.remarks([_found(request.text, "the\n\nthe")])) == []


def test_a_long_text_travels_in_several_requests() -> None:
    text = "\n\n".join(["One hen sat on the wall. " * 20] * 100)
    requests = list(joined([text, "Two hens ran."]))
    assert len(requests) > 3
    assert max(request.size for request in requests) < 20_000
    last = requests[-1]
    ((number, remark),) = last.remarks([_found(last.text, "hens")])
    assert (number, remark.start) == (1, 4)


def test_batches_hold_every_text_once_and_in_order() -> None:
    texts = [f"{n} " * 1000 for n in range(20)]
    found = list(batches(texts))
    assert [text for batch in found for text in batch] == texts
    assert all(sum(map(len, batch)) <= 12_000 for batch in found)
