package weltwright.sheath.pattern;

import weltwright.geometry.Point;

/**
 * A hole through one piece of leather.
 *
 * @param centre in the frame of the piece, in mm
 * @param diameterMm diameter of the awl, chisel or punch; positive
 * @param use its purpose
 */
public record Hole(Point centre, double diameterMm, Use use) {

    /** The purpose of a hole. */
    public enum Use {
        STITCH,
        DRAIN,
        RIVET,
        SNAP
    }
}
