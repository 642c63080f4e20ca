package weltwright.trace.report;

/** The source of a focal length. Focal lengths are in 35 mm terms. */
public sealed interface LensSource {

    /** The ground alone: there was no prior, or it was left out. */
    record GroundAlone() implements LensSource {}

    record Typed(double focal35mm) implements LensSource {}

    /** The metadata of the photo's file. */
    record PictureData(double focal35mm) implements LensSource {}

    /**
     * A phone with a calibrated lens.
     *
     * @param name given by the user
     * @param views number of photos of the calibration
     */
    record Phone(String name, int views, double focal35mm) implements LensSource {}
}
