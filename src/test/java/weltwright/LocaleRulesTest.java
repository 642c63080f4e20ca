package weltwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * No text of the program depends on the computer's language by chance: whatever formats, or changes the case of
 * letters, names its locale. The methods forbidden are those whose Javadoc says that they use the default locale.
 */
class LocaleRulesTest {
    private static final Set<String> OF_THE_DEFAULT_LOCALE = Set.of(
            "java.lang.String.format(java.lang.String, [Ljava.lang.Object;)",
            "java.lang.String.formatted([Ljava.lang.Object;)",
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.io.PrintStream.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintStream.format(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintWriter.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintWriter.format(java.lang.String, [Ljava.lang.Object;)",
            "java.io.Console.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.util.Formatter.<init>()",
            "java.util.Formatter.<init>(java.lang.Appendable)",
            "java.util.Scanner.<init>(java.lang.String)",
            "java.text.DecimalFormat.<init>()",
            "java.text.DecimalFormat.<init>(java.lang.String)",
            "java.text.SimpleDateFormat.<init>()",
            "java.text.SimpleDateFormat.<init>(java.lang.String)",
            "java.text.MessageFormat.<init>(java.lang.String)",
            "java.text.MessageFormat.format(java.lang.String, [Ljava.lang.Object;)",
            "java.text.NumberFormat.getInstance()",
            "java.text.NumberFormat.getNumberInstance()",
            "java.text.NumberFormat.getIntegerInstance()",
            "java.text.NumberFormat.getPercentInstance()",
            "java.text.Collator.getInstance()",
            "java.text.BreakIterator.getLineInstance()",
            "java.text.BreakIterator.getCharacterInstance()",
            "java.text.BreakIterator.getWordInstance()",
            "java.time.format.DateTimeFormatter.ofPattern(java.lang.String)",
            "java.time.format.DateTimeFormatterBuilder.toFormatter()");

    @Test
    void whateverFormatsOrChangesCaseNamesItsLocale() {
        noClasses()
                .should()
                .accessTargetWhere(new DescribedPredicate<JavaAccess<?>>("the default locale is used") {
                    @Override
                    public boolean test(JavaAccess<?> access) {
                        return OF_THE_DEFAULT_LOCALE.contains(access.getTarget().getFullName());
                    }
                })
                .check(ArchitectureTest.PROGRAM);
    }

    /** Jackson's own lower case for enums is {@code String.toLowerCase()}. */
    @Test
    void jacksonDoesNotChangeTheCaseOfEnums() {
        noClasses()
                .should()
                .accessField("com.fasterxml.jackson.databind.cfg.EnumFeature", "WRITE_ENUMS_TO_LOWERCASE")
                .check(ArchitectureTest.PROGRAM);
    }
}
