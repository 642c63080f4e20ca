package weltwright.app.gui.outline;

import java.util.Optional;
import weltwright.knife.Silhouette;

/** The silhouette before its last change, such as an edit, an undo or another trace, shown while that is wanted. */
final class PreviousSilhouette {
    private Optional<Silhouette> last = Optional.empty();
    private Optional<Silhouette> previous = Optional.empty();
    private boolean wanted;

    /** To be called with the present silhouette after each change of the job. */
    void update(Optional<Silhouette> now) {
        if (!now.equals(last)) {
            previous = last;
            last = now;
        }
    }

    void setShown(boolean newWanted) {
        wanted = newWanted;
    }

    /** Returns the silhouette to show in place of the present one; empty where that one is shown. */
    Optional<Silhouette> shown() {
        return wanted ? previous : Optional.empty();
    }
}
