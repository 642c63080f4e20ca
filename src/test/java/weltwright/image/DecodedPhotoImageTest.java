package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the window shows of a picture drawn and written by Java's own writer, orange to the left, blue to the right. */
class DecodedPhotoImageTest {
    private static final Color LEFT = new Color(230, 120, 20);
    private static final Color RIGHT = new Color(10, 40, 200);

    @ParameterizedTest
    @CsvSource({"100, 100, 50", "600, 600, 300", "1000, 600, 300"})
    void isNoLargerThanAskedAndNeverEnlarged(int longestPx, int width, int height) throws IOException {
        BufferedImage image = shown(longestPx);
        assertThat(image.getWidth()).isEqualTo(width);
        assertThat(image.getHeight()).isEqualTo(height);
    }

    @Test
    void keepsColoursAndSides() throws IOException {
        BufferedImage image = shown(300);
        assertThat(new Color(image.getRGB(60, 75))).isEqualTo(LEFT);
        assertThat(new Color(image.getRGB(240, 75))).isEqualTo(RIGHT);
    }

    private static BufferedImage shown(int longestPx) throws IOException {
        return DecodedPhoto.image(photo(), longestPx);
    }

    private static Photo photo() throws IOException {
        BufferedImage drawn = new BufferedImage(600, 300, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = drawn.createGraphics();
        graphics.setColor(LEFT);
        graphics.fillRect(0, 0, 300, 300);
        graphics.setColor(RIGHT);
        graphics.fillRect(300, 0, 300, 300);
        graphics.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(drawn, "png", png);
        return Photo.of("halves.png", png.toByteArray());
    }
}
