package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Frame headers laid out by ITU-T T.81, section B.2.2; numbers of blocks by section A.2. */
class JpegFrameHeaderTest {
    /** 8 bits, 481 rows of 650 pixels, colour half as wide and high as brightness. */
    private static final byte[] HALF_COLOUR = {8, 1, (byte) 0xE1, 2, (byte) 0x8A, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1
    };

    @Test
    void countsMcusAndBlocks() {
        JpegFrameHeader frame = JpegFrameHeader.of(0xC2, HALF_COLOUR, 0, HALF_COLOUR.length);
        assertThat(frame.progressive()).isTrue();
        assertThat(frame.width()).isEqualTo(650);
        assertThat(frame.height()).isEqualTo(481);
        assertThat(frame.mcusAcross()).as("650 / 16, rounded up").isEqualTo(41);
        assertThat(frame.mcusDown()).as("481 / 16, rounded up").isEqualTo(31);
        JpegFrameHeader.Component brightness = frame.components().get(0);
        assertThat(brightness.blocksAcross()).isEqualTo(82);
        assertThat(brightness.blocksDown()).isEqualTo(61);
        assertThat(brightness.nonzero()).hasSize(82 * 62);
        JpegFrameHeader.Component blue = frame.components().get(1);
        assertThat(blue.blocksAcross()).as("325 / 8, rounded up").isEqualTo(41);
        assertThat(blue.blocksDown()).as("241 / 8, rounded up").isEqualTo(31);
        assertThat(blue.quantization()).isEqualTo(1);
    }

    /** Lossless and arithmetic coding, which no photo is stored in. */
    @ParameterizedTest
    @ValueSource(ints = {0xC3, 0xC9, 0xCA})
    void otherCodingsAreRefused(int marker) {
        assertThatThrownBy(() -> JpegFrameHeader.of(marker, HALF_COLOUR, 0, HALF_COLOUR.length))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Cut short, of 12 bits, of two components, without width, and with no blocks across. */
    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 5, 3, 7})
    void damagedOnesAreRefused(int at) {
        byte[] damaged = HALF_COLOUR.clone();
        int to = damaged.length;
        switch (at) {
            case 0 -> damaged[0] = 12;
            case 5 -> damaged[5] = 2;
            case 3 -> {
                damaged[3] = 0;
                damaged[4] = 0;
            }
            case 7 -> damaged[7] = 0x02;
            default -> to = 10;
        }
        int end = to;
        assertThatThrownBy(() -> JpegFrameHeader.of(0xC0, damaged, 0, end))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
