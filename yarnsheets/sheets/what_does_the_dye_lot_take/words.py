"""The words of the dye sheet: cautions, answer, labels of the charts, and arithmetic."""

from yarnsheets.page.sheet import Line

CAUTIONS: tuple[str, ...] = (
    "Weigh powder in still air, in gloves and a dust mask that fits. Wipe up what is spilt with a"
    " damp cloth.",
    "Keep pots, spoons, scale and jugs for dyeing alone. Nothing goes back to the kitchen, and"
    " nobody eats or drinks where you dye.",
    "Acid and hot water burn. Cover your eyes and arms, lift no full pot, and pour acid into water,"
    " never water into acid.",
    "Open a window or work outside, under a lid where you can. Keep children and pets away.",
    "Heat wool slowly and let it cool in the bath: stirring or a sudden chill felts it.",
    "Label each stock with dye, strength and date, and that it is no food. Lock it away.",
    "What the maker’s safety sheet says goes before anything said here. Follow local rules for what"
    " is left over.",
    "With asthma, an allergy or a pregnancy, ask a doctor before you start. If you breathe in or"
    " swallow dye, or it gets into your eyes, get medical help and take the safety sheet along.",
)

ANSWER: tuple[Line, ...] = (
    ("is_one", "Dye {goods} in one lot, with {lot_stock*} of stock."),
    ("is_many", "Dye {goods} in {lots} lots, each with {lot_stock*} of stock."),
    ("is_one", "That stock holds {lot_dye@g} of dye."),
    ("is_many", "In all that is {all_stock}, which holds {all_dye@g} of dye."),
    ("has_spare", "Of the {goods}, {reserve} is the reserve you asked for."),
)

LABELS: dict[str, str] = {
    "stock_label": "{lot_stock} at {depth}",
    "deep_label": "4%",
    "pot_label": "the pot holds {pot_holds}",
    "fibre_label": "{lot_fibre@g}",
    "dye_label": "{lot_dye@g}",
    "first_label": "{first_mass@g}",
    "second_label": "{second_mass@g}",
}

WORKED: tuple[Line, ...] = (
    (
        None,
        "First gloves, a dust mask that fits, still air, and tools that never go back to the"
        " kitchen.",
    ),
    ("has_spare", "With the reserve: {weight:4} and {spare} of it more is {goods:4}."),
    (
        "is_many",
        "Lots: {goods:4} ÷ {pot_holds:4} to a pot, rounded up, is {lots}; {goods:4} ÷ {lots} ="
        " {lot_weight:4} each.",
    ),
    (
        "is_restated",
        "Weight of fibre in a lot: {lot_weight@g:4} as weighed, at {water_now:4} regain, ÷"
        " {wet_now:4} × {wet_used:4} = {lot_fibre@g:4} at {regain_of_recipe:4}. {full_recipe}",
    ),
    (
        "is_as_weighed",
        "Weight of fibre in a lot, as weighed: {lot_fibre@g:4}. The same wool weighed at 9% and at"
        " 16% regain differs by 6.4%, and so does all that follows.",
    ),
    (None, "Dye in a lot: {lot_fibre@g:4} × {depth} = {lot_dye@g:4}."),
    (
        None,
        "Stock for it: {lot_dye@g:4} ÷ {strength:4}\N{NO-BREAK SPACE}g × 100\N{NO-BREAK SPACE}mL ="
        " {lot_stock:4}.",
    ),
    (
        None,
        "The strength is weight in volume: {strength:4}\N{NO-BREAK SPACE}g made up with water to"
        " 100\N{NO-BREAK SPACE}mL. Weight in weight is another scale: at 1% they differ by at most"
        " about 1%.",
    ),
    ("has_mix", "First colour: {lot_stock:4} × {first_part:4} = {stock_1:4}."),
    ("has_mix", "Second colour: {lot_stock:4} × {second_part:4} = {stock_2:4}."),
    ("has_third", "Third colour: {lot_stock:4} × {third_part:4} = {stock_3:4}."),
    ("has_fourth", "Fourth colour: {lot_stock:4} × {fourth_part:4} = {stock_4:4}."),
    ("has_first", "{first_name}: {lot_fibre@g:4} × {first_share} = {first_mass@g:4}."),
    ("has_second", "{second_name}: {lot_fibre@g:4} × {second_share} = {second_mass@g:4}."),
    (
        None,
        "Bath: {lot_fibre@g:4} × {liquor_ratio}\N{NO-BREAK SPACE}mL ÷ 1,000 ="
        " {lot_bath:4|litre|litres}, stock and all: {lot_water:4|litre|litres} of water.",
    ),
    (
        "is_many",
        "For all {lots} lots: {all_stock:4} of stock, so {all_dye@g:4} of dye.",
    ),
    ("adds_both", "Also {all_first@g:4} of {first_name} and {all_second@g:4} of {second_name}."),
    ("adds_first", "Also {all_first@g:4} of {first_name}."),
    ("adds_second", "Also {all_second@g:4} of {second_name}."),
)
