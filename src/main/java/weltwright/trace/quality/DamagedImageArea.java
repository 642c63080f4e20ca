package weltwright.trace.quality;

import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.image.format.PixelRectangle;
import weltwright.message.Messages;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.PhotoAdvice;

/**
 * The part of a photo that damage of its file leaves unknown, with the advice and the error of an outline that follow.
 */
public final class DamagedImageArea {
    private static final Messages TEXTS = Messages.of(DamagedImageArea.class);

    /** Distance over which a damaged block affects its neighbours by the interpolation of colours: a JPEG's MCU. */
    private static final double REACH_PX = 16;

    /** Distance of the points of the outline that are checked; chosen by eye. */
    private static final double STEP_MM = 2;

    /** Damaged part of the photo from which nothing is known of where the damage is; chosen by eye. */
    private static final double WHOLE = 0.99;

    /**
     * Error of the outline outside of the damaged part, at 95 %, for wrong bits that cannot be detected and for the
     * part of the ground that lies in it; chosen by eye.
     */
    private static final double ELSEWHERE_MM = 0.5;

    private final Optional<PixelRectangle> area;
    private final double part;

    private DamagedImageArea(Optional<PixelRectangle> area, double part) {
        this.area = area;
        this.part = part;
    }

    /**
     * Returns the damaged part of a photo.
     *
     * @throws UserFacingException where nothing can be decoded
     */
    public static DamagedImageArea of(Photo photo) {
        Optional<PixelRectangle> area = photo.integrity().damaged();
        double pixels = area.map(a -> (double) (a.right() - a.left()) * (a.bottom() - a.top()))
                .orElse(0.0);
        return new DamagedImageArea(area, pixels / ((double) photo.widthPx() * photo.heightPx()));
    }

    /** Returns the advice about it; empty where the file is sound. */
    public Optional<PhotoAdvice> advice() {
        return area.map(a -> part > WHOLE ? new PhotoAdvice.DamagedSomewhere() : new PhotoAdvice.PartDamaged(part));
    }

    /**
     * Checks that the outline does not touch the damaged part.
     *
     * @throws UserFacingException where it does, or may
     */
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
                    TEXTS.text("damaged-image-area.the-photo-s-file-is"),
                    TEXTS.text("damaged-image-area.copy-it-from-the-camera"));
        }
    }

    /** Returns its share of the outline's error; empty where the file is sound. */
    Optional<ErrorBudget.Part> error() {
        return area.map(a -> new ErrorBudget.Part(ErrorSource.Known.FILE_DAMAGE, ELSEWHERE_MM));
    }
}
