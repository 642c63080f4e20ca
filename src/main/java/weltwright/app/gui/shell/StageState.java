package weltwright.app.gui.shell;

import java.util.Locale;

/** How far a stage is; each is shown by a shape of its own. */
enum StageState {
    /** Something is still to be done. */
    OPEN,
    /** The program is working on it. */
    WORKING,
    DONE,
    /** Done, with something that the user should look at. */
    DOUBTFUL,
    /** Something keeps it from being done. */
    STOPPED;

    /** Returns the key of its words. */
    String key() {
        return "state." + name().toLowerCase(Locale.ROOT);
    }
}
