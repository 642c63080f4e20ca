package weltwright.knife;

import weltwright.geometry.Point;

/** A point of an outline that the user can move. */
public interface MovablePoint {
    /** Returns its position in the silhouette's frame, in mm. */
    Point of(Silhouette silhouette);

    /** Returns the silhouette with this point moved as near to {@code to} as it can go. */
    Silhouette pulled(Silhouette silhouette, Point to);
}
