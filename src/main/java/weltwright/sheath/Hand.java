package weltwright.sheath;

/** The hand that draws the knife, and so the side of the belt that the sheath hangs on. */
public enum Hand {
    RIGHT,
    LEFT
}
