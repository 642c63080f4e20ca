package weltwright.trace;

import java.util.List;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;

/** Signals that the line that was followed in a photo is not the outline of a knife, and tells where it runs. */
public final class RejectedOutlineException extends UserFacingException {
    private static final long serialVersionUID = 1L;

    private final transient List<Point> outlinePx;

    /**
     * @param reason why the line was rejected
     * @param outlinePx points along the closed line, in pixels of the photo
     */
    RejectedOutlineException(UserFacingException reason, List<Point> outlinePx) {
        super(reason);
        this.outlinePx = List.copyOf(outlinePx);
    }

    /** Returns points along the closed line, in pixels of the photo. */
    public List<Point> outlinePx() {
        return outlinePx;
    }
}
