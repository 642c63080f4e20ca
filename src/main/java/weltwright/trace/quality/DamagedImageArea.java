package weltwright.trace.quality;

import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.image.format.PixelRectangle;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.PhotoAdvice;

/**
 * The part of a picture that its file's damage leaves unknown: what is told of it, and what it means for an outline.
 */
public final class DamagedImageArea {
    /** A block of a JPEG's picture, and what of it reaches into the next one where colours are made finer. */
    private static final double REACH_PX = 16;

    private static final double STEP_MM = 2;

    /**
     * What may be wrong outside of it, too, for some bits may be wrong that nothing tells of, and what of the ground
     * lies in it was taken for what it is not.
     */
    private static final double ELSEWHERE_MM = 0.5;

    private final Optional<PixelRectangle> area;
    private final double part;

    private DamagedImageArea(Optional<PixelRectangle> area, double part) {
        this.area = area;
        this.part = part;
    }

    /** Of a photo whose file has been checked; throws {@link UserFacingException} where nothing can be decoded. */
    public static DamagedImageArea of(Photo photo) {
        Optional<PixelRectangle> area = photo.integrity().damaged();
        double pixels = area.map(a -> (double) (a.right() - a.left()) * (a.bottom() - a.top()))
                .orElse(0.0);
        return new DamagedImageArea(area, pixels / ((double) photo.widthPx() * photo.heightPx()));
    }

    /** What to tell of it; empty where the file is sound. */
    public Optional<PhotoAdvice> advice() {
        return area.map(a -> part > 0.99 ? new PhotoAdvice.DamagedSomewhere() : new PhotoAdvice.PartDamaged(part));
    }

    /** Throws {@link UserFacingException} where the outline lies in it, or may. */
    public void check(CameraView view, SilhouetteBuilder.Built built) {
        if (area.isEmpty()) {
            return;
        }
        boolean isIn = built.ring().resampled(STEP_MM).points().stream()
                .map(p ->
                        view.pixel(built.midPlane().pointAbove(built.onGround().apply(p))))
                .anyMatch(px -> area.get().isNear(px.x(), px.y(), REACH_PX));
        if (isIn) {
            throw new UserFacingException(
                    "The photo's file is damaged where the knife is, or may be.",
                    "Copy it from the camera or phone again, or take another.");
        }
    }

    /** Its share of the outline's error; empty where the file is sound. */
    Optional<ErrorBudget.Part> error() {
        return area.map(a -> new ErrorBudget.Part(ErrorSource.Known.FILE_DAMAGE, ELSEWHERE_MM));
    }
}
