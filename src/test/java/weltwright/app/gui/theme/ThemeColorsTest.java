package weltwright.app.gui.theme;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import javax.swing.LookAndFeel;
import javax.swing.UIManager;
import javax.swing.UnsupportedLookAndFeelException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.app.gui.testing.VirtualDisplay;

class ThemeColorsTest {
    @BeforeAll
    static void needsADisplay() {
        VirtualDisplay.assumeThere();
    }

    private LookAndFeel before;

    @BeforeEach
    void keepLookAndFeel() {
        before = UIManager.getLookAndFeel();
    }

    @AfterEach
    void restoreLookAndFeel() throws UnsupportedLookAndFeelException {
        UIManager.setLookAndFeel(before);
    }

    @ParameterizedTest
    @EnumSource
    void eachThemeDefinesAllColors(Theme theme) throws ReflectiveOperationException {
        theme.install();
        List<Method> colors = Arrays.stream(ThemeColors.class.getDeclaredMethods())
                .filter(method -> method.getReturnType() == Color.class && method.getParameterCount() == 0)
                .toList();
        assertThat(colors).hasSizeGreaterThan(20);
        for (Method color : colors) {
            assertThat(color.invoke(null)).as(color.getName()).isNotNull();
        }
    }

    @Test
    void theThemesDefineTheSameColors() throws IOException {
        assertThat(properties("FlatLightLaf").keySet())
                .isEqualTo(properties("FlatDarkLaf").keySet());
    }

    /**
     * Text needs a contrast of 4.5 : 1, lines and icons that mean something 3 : 1 (WCAG 2.2, success criteria 1.4.3 and
     * 1.4.11, with its formulas for luminance).
     */
    @ParameterizedTest
    @EnumSource
    void textAndLinesHaveEnoughContrastOnEachBackground(Theme theme) {
        theme.install();
        for (Color background : List.of(ThemeColors.surface(), ThemeColors.canvas(), ThemeColors.raised())) {
            for (Color text : List.of(
                    ThemeColors.text(),
                    ThemeColors.secondaryText(),
                    ThemeColors.error(),
                    ThemeColors.success(),
                    ThemeColors.warning())) {
                assertThat(contrast(text, background))
                        .as("%s on %s", text, background)
                        .isGreaterThanOrEqualTo(4.5);
            }
            for (Color line : List.of(ThemeColors.accent(), ThemeColors.markLine(), ThemeColors.cutLine())) {
                assertThat(contrast(line, background))
                        .as("%s on %s", line, background)
                        .isGreaterThanOrEqualTo(3);
            }
        }
        assertThat(contrast(ThemeColors.text(), ThemeColors.notificationBackground()))
                .isGreaterThanOrEqualTo(4.5);
        assertThat(contrast(ThemeColors.knifeLine(), ThemeColors.raised())).isGreaterThanOrEqualTo(3);
        assertThat(contrast(
                        UIManager.getColor("Button.default.foreground"),
                        UIManager.getColor("Button.default.background")))
                .isGreaterThanOrEqualTo(4.5);
    }

    private static double contrast(Color a, Color b) {
        double brighter = Math.max(luminance(a), luminance(b));
        double darker = Math.min(luminance(a), luminance(b));
        return (brighter + 0.05) / (darker + 0.05);
    }

    private static double luminance(Color color) {
        return 0.2126 * linear(color.getRed()) + 0.7152 * linear(color.getGreen()) + 0.0722 * linear(color.getBlue());
    }

    private static double linear(int value) {
        double s = value / 255.0;
        return s <= 0.04045 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4);
    }

    private static Properties properties(String laf) throws IOException {
        Properties properties = new Properties();
        try (InputStream in = ThemeColors.class.getResourceAsStream(laf + ".properties")) {
            properties.load(in);
        }
        return properties;
    }
}
