package weltwright.window;

/** The four steps of a job, in their order. */
enum Stage {
    ORDER("Order", '1', "Whose knife it is, dates and notes"),
    KNIFE("Knife", '2', "The photo and the outline"),
    SHEATH("Sheath", '3', "Leather, stitches, belt: the pattern"),
    PAPER("Paper", '4', "Save and print the pattern true to size");

    private final String words;
    private final char key;
    private final String tip;

    Stage(String words, char key, String tip) {
        this.words = words;
        this.key = key;
        this.tip = tip;
    }

    String words() {
        return words;
    }

    /** The key that, with Alt, leads to it; printed before its name. */
    char key() {
        return key;
    }

    String tip() {
        return tip;
    }
}
