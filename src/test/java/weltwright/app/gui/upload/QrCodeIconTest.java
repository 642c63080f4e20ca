package weltwright.app.gui.upload;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;

class QrCodeIconTest {
    /** Read from the painted picture, on a dark window, by ZXing's reader. */
    @Test
    void canBeReadFromTheScreen() throws Exception {
        String text = "http://192.168.178.123:54321/0123456789abcdef0123456789abcdef";
        QrCodeIcon icon = new QrCodeIcon(text);
        int width = icon.getIconWidth() + 40;
        int height = icon.getIconHeight() + 40;
        BufferedImage screen = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = screen.createGraphics();
        g.setColor(Color.DARK_GRAY);
        g.fillRect(0, 0, width, height);
        icon.paintIcon(null, g, 20, 20);
        g.dispose();
        RGBLuminanceSource pixels =
                new RGBLuminanceSource(width, height, screen.getRGB(0, 0, width, height, null, 0, width));
        assertThat(new QRCodeReader()
                        .decode(new BinaryBitmap(new HybridBinarizer(pixels)))
                        .getText())
                .isEqualTo(text);
    }
}
