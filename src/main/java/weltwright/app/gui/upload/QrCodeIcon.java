package weltwright.app.gui.upload;

import com.formdev.flatlaf.util.UIScale;
import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.util.Map;
import javax.swing.Icon;

/** A QR code (ISO/IEC 18004), black on white in any theme, with its quiet zone of four modules. */
final class QrCodeIcon implements Icon {
    private static final int QUIET_ZONE = 4;
    private static final int LEAST_SIZE = 264;

    private final BitMatrix modules;

    QrCodeIcon(String text) {
        try {
            modules = new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M,
                                    EncodeHintType.MARGIN,
                                    QUIET_ZONE));
        } catch (WriterException e) {
            throw new IllegalArgumentException(e); // the text is too long for a QR code
        }
    }

    private int modulePx() {
        return Math.max(2, UIScale.scale(LEAST_SIZE) / modules.getWidth());
    }

    @Override
    public int getIconWidth() {
        return modules.getWidth() * modulePx();
    }

    @Override
    public int getIconHeight() {
        return modules.getHeight() * modulePx();
    }

    @Override
    public void paintIcon(Component component, Graphics g, int x, int y) {
        int size = modulePx();
        g.setColor(Color.WHITE);
        g.fillRect(x, y, getIconWidth(), getIconHeight());
        g.setColor(Color.BLACK);
        for (int row = 0; row < modules.getHeight(); row++) {
            for (int column = 0; column < modules.getWidth(); column++) {
                if (modules.get(column, row)) {
                    g.fillRect(x + column * size, y + row * size, size, size);
                }
            }
        }
    }
}
