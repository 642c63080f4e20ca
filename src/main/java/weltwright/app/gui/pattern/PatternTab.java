package weltwright.app.gui.pattern;

import weltwright.app.gui.theme.ToolIcons;
import weltwright.message.Messages;

/** The tabs of the {@link PatternPanel}. */
enum PatternTab {
    PATTERN(
            Messages.of(PatternTab.class).text("pattern-tab.pattern"),
            "pattern",
            Messages.of(PatternTab.class).text("pattern-tab.the-pieces-to-cut")),
    CROSS_SECTION(
            Messages.of(PatternTab.class).text("pattern-tab.cross-section"),
            "cross-section",
            Messages.of(PatternTab.class).text("pattern-tab.the-sewn-sheath-cut-through")),
    TEST_DRAW(
            Messages.of(PatternTab.class).text("pattern-tab.test-draw"),
            "test-draw",
            Messages.of(PatternTab.class).text("pattern-tab.the-knife-drawn-from-the")),
    HARDWARE(
            Messages.of(PatternTab.class).text("pattern-tab.hardware"),
            "hardware",
            Messages.of(PatternTab.class).text("pattern-tab.rivets-snaps-eyelets-and-rings"));

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
