"""Paths of the figures in a report, as `explain` takes them."""


def name_of(item):
    """What an item of a list is called in a path."""
    return next(item[key] for key in ("side", "edge", "pane", "state", "id") if key in item)


def figures(value, path):
    """Every number below a value of the report, with its path."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from figures(inner, f"{path}/{key}")
    elif isinstance(value, list):
        for item in (each for each in value if not isinstance(each, str)):
            yield from figures(item, f"{path}/{name_of(item)}")
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        yield path, value
