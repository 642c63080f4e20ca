package weltwright.knife;

import weltwright.geometry.Point;

/** Something on an outline that the user can take hold of and pull. */
public interface MovablePoint {
    /** Where it is. */
    Point of(Silhouette silhouette);

    /** The silhouette with it pulled towards {@code to}, as near as it can go. */
    Silhouette pulled(Silhouette silhouette, Point to);
}
