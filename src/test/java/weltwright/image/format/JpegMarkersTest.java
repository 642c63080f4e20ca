package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Markers by ITU-T T.81, table B.1 and section B.1.1. */
class JpegMarkersTest {
    private static byte[] bytes(int... values) {
        byte[] bytes = new byte[values.length];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) values[i];
        }
        return bytes;
    }

    @Test
    void findsTheNextMarkerBehindFilling() {
        byte[] file = bytes(0xFF, 0xD8, 7, 0xFF, 0xFF, 0xDB, 0, 3, 1);
        assertThat(JpegMarkers.next(file, 0)).isEqualTo(1);
        assertThat(JpegMarkers.next(file, 2)).isEqualTo(5);
        assertThat(JpegMarkers.next(file, 6)).as("there is no other").isEqualTo(file.length);
    }

    /** Restart markers and stuffed bytes are part of a scan's data. */
    @Test
    void aScanEndsAtAMarkerThatIsNoRestart() {
        byte[] file = bytes(9, 0xFF, 0, 8, 0xFF, 0xD3, 7, 0xFF, 0xD9);
        assertThat(JpegMarkers.endOfScan(file, 0)).isEqualTo(7);
        assertThat(JpegMarkers.endOfScan(bytes(1, 2, 3), 0)).isEqualTo(3);
    }

    @Test
    void knowsWhichMarkersStandAlone() {
        assertThat(JpegMarkers.hasLength(0xDB)).isTrue();
        assertThat(JpegMarkers.hasLength(0xC0)).isTrue();
        assertThat(JpegMarkers.hasLength(0xDA)).isTrue();
        for (int alone : new int[] {0x01, 0xD0, 0xD7, 0xD8, 0xD9}) {
            assertThat(JpegMarkers.hasLength(alone)).isFalse();
        }
    }

    @Test
    void readsALengthOfTwoBytes() {
        assertThat(JpegMarkers.length(bytes(0, 0x12, 0xF4), 1)).isEqualTo(0x12F4);
        assertThat(JpegMarkers.length(bytes(0, 0x12), 1)).isEqualTo(-1);
    }
}
