"""ISBN check digits and the bars of EAN-13, against the sum of ISO 2108 and the lengths of ISO/IEC 15420 (both from memory)."""

from hypothesis import given
from hypothesis import strategies as st
from tests.source.texts import BOOK, book

from booklet.draw.barcode import modules


@given(st.text("0123456789", min_size=9, max_size=9))
def test_the_last_digit_makes_the_weighted_sum_a_multiple_of_ten(digits):
    first = "978" + digits
    last = -sum(int(digit) * (3 if place % 2 else 1) for place, digit in enumerate(first)) % 10
    made, wrong = book(BOOK + f'isbn: "{first}{last}"\n')
    assert (made.isbn, wrong) == (f"{first}{last}", [])
    _, wrong = book(BOOK + f'isbn: "{first}{(last + 1) % 10}"\n')
    assert len(wrong) == 1 and wrong[0].endswith("[bad-isbn]")


def test_bars_begin_break_and_end_with_guards():
    code = modules("9783161484100")
    assert len(code) == 95 and code[:3] == code[-3:] == "101" and code[45:50] == "01010"
