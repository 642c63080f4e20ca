package weltwright.app.gui.model;

import java.util.Locale;
import weltwright.message.Messages;

/** The stages of a job, in their order; the window shows one form for each. */
public enum WorkflowStage {
    KNIFE('1'),
    SHEATH('2'),
    LEATHER('3'),
    PAPER('4'),
    BENCH('5');

    private static final Messages MESSAGES = Messages.of(WorkflowStage.class);

    private final char mnemonic;

    WorkflowStage(char mnemonic) {
        this.mnemonic = mnemonic;
    }

    public String label() {
        return MESSAGES.text("stage." + name().toLowerCase(Locale.ROOT));
    }

    /** Returns the digit that selects the stage together with Alt. */
    public char mnemonic() {
        return mnemonic;
    }

    public String toolTip() {
        return MESSAGES.text("stage." + name().toLowerCase(Locale.ROOT) + ".tip");
    }
}
