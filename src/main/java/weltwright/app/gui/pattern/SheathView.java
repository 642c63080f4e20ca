package weltwright.app.gui.pattern;

import weltwright.app.gui.theme.ToolIcons;

/** What can be looked at of a sheath. */
enum SheathView {
    PATTERN("Pattern", "pattern", "The pieces to cut"),
    CROSS_SECTION("Cross-section", "cross-section", "The sewn sheath cut through, anywhere along the knife"),
    TEST_DRAW("Test draw", "test-draw", "The knife drawn from the sheath, before any leather is cut"),
    WORK("Order of work", "work", "What to do at the bench, first to last, and why in this order"),
    HARDWARE("Hardware", "hardware", "Rivets, snaps, eyelets and rings: what this sheath takes, and what you have");

    private final String words;
    private final String icon;
    private final String tip;

    SheathView(String words, String icon, String tip) {
        this.words = words;
        this.icon = icon;
        this.tip = tip;
    }

    String words() {
        return words;
    }

    /** Its name among the {@link ToolIcons}. */
    String icon() {
        return icon;
    }

    String tip() {
        return tip;
    }
}
