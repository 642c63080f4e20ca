package weltwright.app.gui.finding;

import java.util.Optional;
import weltwright.sheath.pattern.Severity;

/**
 * Something that a check found.
 *
 * @param place what was checked
 * @param text for the user: what is wrong, where, and what to do
 * @param show shows where it is, once the drawing of its place is visible
 * @param remedy what mends it; empty where the user must
 */
public record Finding(Place place, Severity severity, String text, Runnable show, Optional<Remedy> remedy) {

    /** A finding that the user must mend. */
    public Finding(Place place, Severity severity, String text, Runnable show) {
        this(place, severity, text, show, Optional.empty());
    }

    /** What was checked. */
    public enum Place {
        PHOTO,
        OUTLINE,
        SHEATH
    }

    /**
     * A change of the job that mends what was found.
     *
     * @param label of its button, a verb first
     */
    public record Remedy(String label, Runnable apply) {}
}
