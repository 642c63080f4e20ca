package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;

import weltwright.fuzz.FuzzedInput;

/**
 * Any bytes as a photo: refused, or a photo with a size, an orientation and a believable focal length, whose stripped
 * file is a photo again with nothing left to strip.
 */
public final class PhotoFuzzTarget {
    private PhotoFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        FuzzedInput.unlessRefused(() -> Photo.of("photo", input)).ifPresent(photo -> {
            assertThat(photo.widthPx()).isPositive();
            assertThat(photo.heightPx()).isPositive();
            assertThat(photo.orientation()).isBetween(1, 8);
            photo.focal35mm().ifPresent(focal -> assertThat(focal).isBetween(5.0, 2000.0));
            Photo again = Photo.of("photo", photo.bytes());
            assertThat(again).isEqualTo(photo);
            assertThat(again.camera()).isEmpty();
            FuzzedInput.unlessRefused(photo::integrity);
        });
    }
}
