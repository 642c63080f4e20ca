package weltwright.trace.report;

/** Where a focal length comes from. Focal lengths are in 35 mm terms. */
public sealed interface LensSource {

    /** The ground alone: nothing was told of the lens, or it was left out. */
    record GroundAlone() implements LensSource {}

    record Typed(double focal35mm) implements LensSource {}

    /** The metadata of the photo's file. */
    record PictureData(double focal35mm) implements LensSource {}

    /**
     * A phone whose lens was calibrated before.
     *
     * @param name what the user calls it
     * @param views how many photos it was calibrated from
     */
    record Phone(String name, int views, double focal35mm) implements LensSource {}
}
