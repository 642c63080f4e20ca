package weltwright.sheath;

/** The hand that draws the knife, and so the hip that the sheath hangs on. */
public enum Hand {
    RIGHT,
    LEFT
}
