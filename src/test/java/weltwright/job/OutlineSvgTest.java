package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import weltwright.error.UserFacingException;
import weltwright.layout.stock.Stock;

class OutlineSvgTest {
    @TempDir
    private Path folder;

    private Stock read(String svg) throws Exception {
        Path file = folder.resolve("hide.svg");
        Files.writeString(file, svg);
        return StockShelf.outline(file, "hide", OptionalDouble.of(3));
    }

    private static String page(String content) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"20cm\" height=\"100mm\" viewBox=\"0 0 400 200\">"
                + content + "</svg>";
    }

    /**
     * Two units are a millimetre; the page's y points down. A circle of four cubic curves is off by 0.03 % (from
     * memory).
     */
    @Test
    void readsOutlineFlawsAndPoorerParts() throws Exception {
        double k = 0.5522847498 * 20;
        Stock stock = read(page("<g><polygon points=\"0,0 400,0 400,200 0,200\"/></g>"
                + "<path id=\"hole\" d=\"M100,40 c" + k + ",0 20," + (20 - k) + " 20,20 0," + k + " " + (k - 20)
                + ",20 -20,20 " + -k + ",0 -20," + (k - 20) + " -20,-20 0," + -k + " " + (20 - k) + ",-20 20,-20 z\"/>"
                + "<path id=\"poorer-1\" d=\"M0 150H400V200H0Z\"/>"));

        assertThat(stock.outline().polygon().getArea()).isCloseTo(20_000, within(1e-6));
        assertThat(stock.flaws()).hasSize(1);
        assertThat(Math.abs(stock.flaws().get(0).signedAreaMm2())).isCloseTo(Math.PI * 100, within(1.0));
        Envelope flaw = stock.flaws().get(0).polygon().getEnvelopeInternal();
        assertThat(flaw.centre().x).isCloseTo(50, within(0.05));
        assertThat(flaw.centre().y).isCloseTo(70, within(0.05));
        Envelope poorer = stock.poorer().get(0).polygon().getEnvelopeInternal();
        assertThat(poorer.getMinY()).isCloseTo(0, within(1e-9));
        assertThat(poorer.getMaxY()).isCloseTo(25, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "<svg",
                "<svg width=\"100\" height=\"100\"><polygon points=\"0,0 1,0 1,1\"/></svg>",
                "<svg width=\"9mm\" height=\"9mm\"/>",
                "<svg width=\"9mm\" height=\"9mm\"><g transform=\"scale(2)\"><polygon points=\"0,0 1,0 1,1\"/></g></svg>",
                "<svg width=\"9mm\" height=\"9mm\"><path d=\"M0,0 A 1 1 0 0 0 3 3 Z\"/></svg>",
                "<!DOCTYPE svg [<!ENTITY a \"b\">]><svg width=\"9mm\" height=\"9mm\"/>",
                "<svg width=\"9mm\" height=\"9mm\"><path d=\"L0,0 1,1\"/></svg>"
            })
    void refusesWhatIsNoSuchDrawing(String svg) {
        assertThatThrownBy(() -> read(svg))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("is no drawing of stock");
    }
}
