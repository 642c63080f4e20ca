package weltwright.ground;

import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.opencv_java;

/** OpenCV's native libraries, loaded once, when first needed: a run that never looks at a photo does without. */
final class Natives {
    static {
        Loader.load(opencv_java.class);
    }

    private Natives() {}

    /** Returns once the libraries are there, whichever thread asks first. */
    static void load() {
        // The class's own initialiser does the work, and Java runs it exactly once.
    }
}
