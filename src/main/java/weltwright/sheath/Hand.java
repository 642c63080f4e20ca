package weltwright.sheath;

/**
 * The hand that draws the knife, and so the side of the belt that the sheath hangs on. The edge looks forward: seen from
 * its face with the tip down, a sheath for the right hand has its edge on the right, one for the left hand on the left.
 */
public enum Hand {
    RIGHT,
    LEFT
}
