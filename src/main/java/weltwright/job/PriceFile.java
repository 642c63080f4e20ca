package weltwright.job;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.io.UserDirectory;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.cost.PriceList;
import weltwright.message.Messages;
import weltwright.sheath.hardware.HardwareList;

/** Reads and writes the maker's prices as a JSON file, which the maker changes in a text editor. */
public final class PriceFile {
    private static final Messages TEXTS = Messages.of(PriceFile.class);

    private static final String FORMAT = "weltwright prices";
    private static final int VERSION = 1;
    private static final int GREATEST_BYTES = 1_000_000;

    public static final FileKind KIND = FileKind.of(TEXTS.text("price-file.a-list-of-prices"), "\"" + FORMAT + "\"");

    private PriceFile() {}

    /** Where the program looks for the prices of this computer's user. */
    public static Path standard() {
        return UserDirectory.SETTINGS.path().resolve("prices.json");
    }

    /** A list in which every price is 0, for the maker to fill in, in the currency of the computer's country. */
    public static PriceList blank() {
        Map<String, BigDecimal> hardware = new TreeMap<>();
        Stream.concat(HardwareList.USUAL.fasteners().stream(), HardwareList.USUAL.rings().stream())
                .forEach(item -> hardware.put(item.name(), BigDecimal.ZERO));
        return new PriceList(
                currency(),
                new LeatherPrice(BigDecimal.ZERO, LeatherPrice.Per.SQUARE_FOOT),
                BigDecimal.ZERO,
                hardware,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO);
    }

    private static Currency currency() {
        try {
            Currency local = Currency.getInstance(Locale.getDefault(Locale.Category.FORMAT));
            return local == null ? Currency.getInstance("EUR") : local;
        } catch (IllegalArgumentException noCountry) {
            return Currency.getInstance("EUR");
        }
    }

    /**
     * Writes a list atomically, making its folder where that is missing.
     *
     * @throws UserFacingException if the file cannot be written or must not be replaced
     */
    public static void write(PriceList prices, Path file) {
        Document document = new Document(
                FORMAT,
                VERSION,
                prices.currency().getCurrencyCode(),
                prices.leather().amount(),
                prices.leather().per().name().toLowerCase(Locale.ROOT),
                prices.threadPerMetre(),
                new TreeMap<>(prices.hardware()),
                prices.otherHardware(),
                prices.glueAndFinish(),
                prices.labourPerHour(),
                prices.overheadPercent(),
                prices.marginPercent(),
                prices.roundTo(),
                prices.taxPercent());
        AtomicFile.of(file, KIND)
                .withFolder()
                .write(out ->
                        out.write(JobFile.JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(document)));
    }

    /**
     * The prices in a file; empty where there is none, or nothing has a price yet.
     *
     * @throws UserFacingException as {@link #read} does
     */
    public static Optional<PriceList> ifSet(Path file) {
        return Files.exists(file) ? Optional.of(read(file)).filter(prices -> !prices.isBlank()) : Optional.empty();
    }

    /**
     * Reads a list.
     *
     * @throws UserFacingException if the file is not a list of prices, or a price is out of bounds
     */
    public static PriceList read(Path file) {
        byte[] json = InputFile.read(file, GREATEST_BYTES, "prices.json");
        Document read;
        try {
            read = JobFile.JSON.readValue(json, Document.class);
        } catch (IOException e) {
            throw notAList(file, e);
        }
        if (read == null // the JSON "null"
                || !FORMAT.equals(read.format)
                || read.version != VERSION) {
            throw notAList(file, null);
        }
        try {
            return new PriceList(
                    Currency.getInstance(read.currency),
                    new LeatherPrice(read.leather, LeatherPrice.Per.valueOf(read.leatherPer.toUpperCase(Locale.ROOT))),
                    read.threadPerMetre,
                    read.hardware,
                    read.otherHardware,
                    read.glueAndFinish,
                    read.labourPerHour,
                    read.overheadPercent,
                    read.marginPercent,
                    read.roundTo,
                    read.taxPercent);
        } catch (IllegalArgumentException | NullPointerException e) {
            throw notAList(file, e);
        }
    }

    private static UserFacingException notAList(Path file, @Nullable Exception cause) {
        return new UserFacingException(
                TEXTS.text("price-file.is-no-list-of-prices", file),
                TEXTS.text("price-file.have-the-program-write-one"),
                cause);
    }

    @JsonNaming(SnakeCaseStrategy.class)
    private record Document(
            String format,
            int version,
            String currency,
            BigDecimal leather,
            String leatherPer,
            BigDecimal threadPerMetre,
            Map<String, BigDecimal> hardware,
            BigDecimal otherHardware,
            BigDecimal glueAndFinish,
            BigDecimal labourPerHour,
            BigDecimal overheadPercent,
            BigDecimal marginPercent,
            BigDecimal roundTo,
            BigDecimal taxPercent) {}
}
