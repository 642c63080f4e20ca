package weltwright.app.gui.pattern;

import weltwright.app.gui.theme.ToolIcons;

/** The tabs of the {@link PatternPanel}. */
enum PatternTab {
    PATTERN("Pattern", "pattern", "The pieces to cut"),
    CROSS_SECTION("Cross-section", "cross-section", "The sewn sheath cut through, anywhere along the knife"),
    TEST_DRAW("Test draw", "test-draw", "The knife drawn from the sheath, before any leather is cut"),
    HARDWARE("Hardware", "hardware", "Rivets, snaps, eyelets and rings: what this sheath takes, and what you have");

    private final String label;
    private final String icon;
    private final String toolTip;

    PatternTab(String label, String icon, String toolTip) {
        this.label = label;
        this.icon = icon;
        this.toolTip = toolTip;
    }

    String label() {
        return label;
    }

    /** Returns the name of its {@link ToolIcons icon}. */
    String icon() {
        return icon;
    }

    String toolTip() {
        return toolTip;
    }
}
