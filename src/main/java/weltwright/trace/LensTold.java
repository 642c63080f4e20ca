package weltwright.trace;

import java.util.Locale;
import java.util.Optional;
import weltwright.ground.LensPrior;
import weltwright.ground.PhoneLens;
import weltwright.ground.ViewSolver;
import weltwright.photo.Photo;

/**
 * What is known of a photo's lens before its ground is looked at, and who says so.
 *
 * @param prior likeliest values and their doubt
 * @param source who says so, to stand in "Focal length 26.1 mm, from ..."
 * @param told the focal length that was told, in 35 mm terms, and by whom; empty where nobody did
 */
record LensTold(LensPrior prior, String source, Optional<String> told) {
    /** Focal length of a phone's main camera in 35 mm terms, and how widely the lenses in use scatter. Common practice. */
    private static final double USUAL_FOCAL_35MM = 27;

    private static final double USUAL_FOCAL_SIGMA = 0.5;

    /** Exif gives whole millimetres and ignores that lenses move as they focus. Common practice. */
    private static final double EXIF_FOCAL_SIGMA = 0.03;

    private static final double TYPED_FOCAL_SIGMA = 0.02;

    static LensTold of(Photo photo, TraceSettings settings) {
        double pxPer35mm = Math.hypot(photo.widthPx(), photo.heightPx()) / PhoneLens.DIAGONAL_35MM;
        if (settings.focal35mm().isPresent()) {
            double focal = settings.focal35mm().getAsDouble();
            return new LensTold(
                    LensPrior.ofFocal(focal * pxPer35mm, TYPED_FOCAL_SIGMA),
                    "as typed, checked against the ground",
                    Optional.of(String.format(Locale.ROOT, "%.1f mm was typed", focal)));
        }
        if (settings.phone().isPresent()) {
            PhoneLens phone = settings.phone().get();
            return new LensTold(
                    phone.prior(photo),
                    String.format(
                            Locale.ROOT,
                            "from %d photos of the sheet taken with \"%s\" and from the ground",
                            phone.views(),
                            phone.name()),
                    Optional.of(String.format(
                            Locale.ROOT, "what was measured of \"%s\" says %.1f mm", phone.name(), phone.focal35mm())));
        }
        if (photo.focal35mm().isPresent()) {
            double focal = photo.focal35mm().getAsDouble();
            return new LensTold(
                    LensPrior.ofFocal(focal * pxPer35mm, EXIF_FOCAL_SIGMA),
                    "from the picture's data and the ground",
                    Optional.of(String.format(Locale.ROOT, "the picture's data say %.1f mm", focal)));
        }
        return new LensTold(
                LensPrior.ofFocal(USUAL_FOCAL_35MM * pxPer35mm, USUAL_FOCAL_SIGMA),
                "from the ground alone",
                Optional.empty());
    }

    /** A camera's focal length in 35 mm terms. */
    static double focal35mm(double focalPx, double diagonalPx) {
        return focalPx * PhoneLens.DIAGONAL_35MM / diagonalPx;
    }

    /** Where what was told is not what the ground shows; empty where both agree, or nothing was told. */
    Optional<PhotoAdvice> contradiction(ViewSolver.Solution solution, double diagonalPx) {
        return told.filter(words -> solution.focalContradiction(prior) > ViewSolver.CONTRADICTED)
                .map(words -> new PhotoAdvice(
                        PhotoAdvice.Matter.LENS_CONTRADICTED,
                        String.format(
                                Locale.ROOT,
                                "Of the focal length %s, but the ground looks as seen through %.1f mm.",
                                words,
                                focal35mm(solution.view().camera().focalPx(), diagonalPx)),
                        "Use the photo as the camera took it, not cropped; see that the ground lies flat and is of the"
                                + " size that was told."));
    }
}
