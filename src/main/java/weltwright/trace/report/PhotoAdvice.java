package weltwright.trace.report;

/**
 * An advice on a photo: a property that makes its trace worse or impossible, with its measures. Its sentences, with how
 * to take a better photo, are made where it is shown.
 */
public sealed interface PhotoAdvice {

    /**
     * The camera was too near.
     *
     * @param distanceMm of the camera from the ground
     * @param enoughMm distance from which the error of the knife's height matters little
     */
    record TooNear(double distanceMm, double enoughMm) implements PhotoAdvice {}

    /**
     * The view was too oblique.
     *
     * @param degrees angle of the line of sight to the ground's middle from the vertical
     */
    record TooSlanted(double degrees) implements PhotoAdvice {}

    /**
     * The picture is blurred or shaken.
     *
     * @param smearPx width from 10 % to 90 % of an edge on the ground, in pixels
     * @param smearMm the same in mm
     */
    record Blurred(double smearPx, double smearMm) implements PhotoAdvice {}

    /**
     * The picture is blurred or shaken, and its scale is unknown.
     *
     * @param smearPx width from 10 % to 90 % of an edge
     */
    record BlurredAtUnknownScale(double smearPx) implements PhotoAdvice {}

    /**
     * The picture is too dark.
     *
     * @param whiteLevel its lightest grey level, of 255
     */
    record TooDark(double whiteLevel) implements PhotoAdvice {}

    /**
     * Too much of the picture is plain white.
     *
     * @param burntPart the part that is plain white, 0 to 1
     */
    record Overexposed(double burntPart) implements PhotoAdvice {}

    /**
     * The picture has little contrast.
     *
     * @param blackLevel its darkest grey level, of 255
     * @param whiteLevel its lightest grey level
     */
    record Hazy(double blackLevel, double whiteLevel) implements PhotoAdvice {}

    /**
     * The print of the ground has little contrast.
     *
     * @param contrast of the print relative to what is beside it, 0 to 1
     */
    record FaintPrint(double contrast) implements PhotoAdvice {}

    /**
     * Too much of the ground is hidden or outside of the picture.
     *
     * @param seen number of the ground's control points that were found
     * @param all number of its control points
     */
    record GroundHidden(int seen, int all) implements PhotoAdvice {}

    /** The knife runs out of the picture. */
    record KnifeReachesOver() implements PhotoAdvice {}

    record TooCoarse(double pxPerMm) implements PhotoAdvice {}

    /**
     * The ground contradicts the prior of the lens.
     *
     * @param told source of the prior, which was left out
     * @param seen35mm focal length measured by the ground, in 35 mm terms
     */
    record LensContradicted(LensSource told, double seen35mm) implements PhotoAdvice {}

    /** The photo is a part of a larger one. */
    record CutOut() implements PhotoAdvice {}

    /**
     * A part of the file's data is damaged.
     *
     * @param part the part of the picture that is unknown by it, 0 to 1
     */
    record PartDamaged(double part) implements PhotoAdvice {}

    /** The file is damaged at an unknown place. */
    record DamagedSomewhere() implements PhotoAdvice {}
}
