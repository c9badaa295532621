"""`python -m booklet`: in a checkout, inside its own environment; where booklet is installed, at once."""

from booklet import bootstrap


def start():
    """Run the command line, setting up the checkout's environment first where that is needed."""
    if bootstrap.is_needed():
        bootstrap.enter("booklet")
    from booklet.cli import main

    main()


if __name__ == "__main__":
    start()
