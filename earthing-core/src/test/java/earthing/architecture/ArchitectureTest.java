package earthing.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import earthing.site.Key;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.math3.random.RandomGenerator;
import org.jspecify.annotations.NullMarked;

/** The rooms of the library, which may see which, and what no class of it may do. */
@AnalyzeClasses(packages = "earthing", importOptions = DoNotIncludeTests.class)
final class ArchitectureTest {

    /** A room sees only rooms on a lower floor; rooms on one floor do not see each other. */
    private static final Map<String, Integer> FLOOR_OF_ROOM = Map.ofEntries(
            Map.entry("quantity", 0),
            Map.entry("numeric", 0),
            Map.entry("network", 1),
            Map.entry("soil", 1),
            Map.entry("conductor", 1),
            Map.entry("fault", 2),
            Map.entry("surge", 2),
            Map.entry("electrode", 2),
            Map.entry("safety", 2),
            Map.entry("site", 3),
            Map.entry("study", 4),
            Map.entry("compliance", 5),
            Map.entry("decision", 6),
            Map.entry("fleet", 6),
            Map.entry("exercise", 6),
            Map.entry("report", 7));

    /** Raised as the library grows, so that no rule here can pass because nothing was looked at. */
    private static final int FEWEST_CLASSES = 300;

    private static final String[] PDF_LIBRARIES = {
        "com.openhtmltopdf..",
        "org.apache.pdfbox..",
        "org.apache.fontbox..",
        "org.apache.xmpbox..",
        "org.apache.batik..",
        "org.apache.xmlgraphics..",
        "de.rototor..",
        "java.awt..",
        "javax.imageio.."
    };

    private static final Pattern JUNK_DRAWER =
            Pattern.compile(".*\\.(utils?|impl|managers?|helpers?|common|misc)(\\..*)?");

    private static final Set<String> CLOCKS = Set.of(
            "java.lang.System.currentTimeMillis",
            "java.lang.System.nanoTime",
            "java.time.Instant.now",
            "java.time.LocalDate.now",
            "java.time.LocalTime.now",
            "java.time.LocalDateTime.now",
            "java.time.OffsetDateTime.now",
            "java.time.ZonedDateTime.now",
            "java.time.Year.now",
            "java.time.YearMonth.now",
            "java.time.Clock.systemUTC",
            "java.time.Clock.systemDefaultZone",
            "java.time.Clock.system",
            "java.time.ZoneId.systemDefault",
            "java.util.Calendar.getInstance",
            "java.util.Date.<init>()");

    private static final Set<String> CHANCE = Set.of(
            "java.lang.Math.random",
            "java.lang.StrictMath.random",
            "java.util.UUID.randomUUID",
            "java.util.Random.<init>()",
            "java.util.SplittableRandom.<init>()",
            "java.util.Collections.shuffle(java.util.List)",
            "java.util.concurrent.ThreadLocalRandom.current",
            "java.security.SecureRandom.<init>",
            "org.apache.commons.math3.random.RandomDataGenerator.<init>()");

    /** Calls that take the machine's locale or character set without saying so. */
    private static final Set<String> MACHINE_HABITS = Set.of(
            "java.util.Locale.getDefault",
            "java.nio.charset.Charset.defaultCharset",
            "java.lang.System.lineSeparator",
            "java.lang.String.format(java.lang.String, [Ljava.lang.Object;)",
            "java.lang.String.formatted",
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.lang.String.getBytes()",
            "java.lang.String.<init>([B)",
            "java.lang.String.<init>([B, int, int)",
            "java.util.Formatter.<init>()",
            "java.util.Formatter.<init>(java.lang.Appendable)",
            "java.io.PrintStream.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintStream.format(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintWriter.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintWriter.format(java.lang.String, [Ljava.lang.Object;)",
            "java.io.ByteArrayOutputStream.toString()",
            "java.io.InputStreamReader.<init>(java.io.InputStream)",
            "java.io.OutputStreamWriter.<init>(java.io.OutputStream)",
            "java.io.FileReader.<init>(java.io.File)",
            "java.io.FileReader.<init>(java.lang.String)",
            "java.io.FileWriter.<init>(java.io.File)",
            "java.io.FileWriter.<init>(java.lang.String)",
            "java.util.Scanner.<init>(java.io.InputStream)",
            "java.text.DecimalFormat.<init>()",
            "java.text.DecimalFormat.<init>(java.lang.String)",
            "java.text.NumberFormat.getInstance()",
            "java.text.NumberFormat.getNumberInstance()",
            "java.text.NumberFormat.getPercentInstance()",
            "java.text.SimpleDateFormat.<init>(java.lang.String)",
            "java.time.format.DateTimeFormatter.ofPattern(java.lang.String)");

    @ArchTest
    static void enoughClassesAreLookedAt(JavaClasses classes) {
        assertThat(classes.size()).isGreaterThanOrEqualTo(FEWEST_CLASSES);
    }

    @ArchTest
    static final ArchRule importsGoDownTheFloors = classes().should(importOnlyFromLowerFloors());

    @ArchTest
    static final ArchRule packagesHaveNoCycles =
            slices().matching("earthing.(**)").should().beFreeOfCycles();

    /** Who does not ask for a PDF does not pay for its libraries. */
    @ArchTest
    static final ArchRule onlyThePdfRoomSeesPdfLibraries = noClasses()
            .that()
            .resideOutsideOfPackage("earthing.report.pdf")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(PDF_LIBRARIES)
            .as("only earthing.report.pdf sees the PDF libraries and the drawing classes that they need");

    @ArchTest
    static final ArchRule onlyTheReportAsksForPdf = noClasses()
            .that()
            .resideOutsideOfPackage("earthing.report.pdf")
            .and()
            .doNotHaveFullyQualifiedName("earthing.report.Report")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("earthing.report.pdf")
            .as("only earthing.report.Report asks for a PDF");

    @ArchTest
    static void thePdfRoomDoesSeeThem(JavaClasses classes) {
        assertThat(classes.stream()
                        .filter(type -> type.getPackageName().equals("earthing.report.pdf"))
                        .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                        .map(dependency -> dependency.getTargetClass().getPackageName()))
                .as("packages that the rules above are about")
                .anyMatch(name -> name.startsWith("com.openhtmltopdf"))
                .anyMatch(name -> name.startsWith("org.apache.pdfbox"));
    }

    @ArchTest
    static final ArchRule noJunkDrawer = noClasses()
            .should(resideInPackageMatching(JUNK_DRAWER))
            .as("no package is called util, impl, manager, helper, common or misc");

    @ArchTest
    static void everyPackageIsNullMarked(JavaClasses classes) {
        Set<String> unmarked = classes.stream()
                .map(JavaClass::getPackage)
                .filter(pack -> !pack.isAnnotatedWith(NullMarked.class))
                .map(pack -> pack.getName())
                .collect(Collectors.toSet());
        assertThat(unmarked).as("packages without a @NullMarked package-info").isEmpty();
    }

    @ArchTest
    static final ArchRule nothingPrints = NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;

    @ArchTest
    static final ArchRule nothingEndsTheProcess = noClasses()
            .should(callOneOf(Set.of("java.lang.System.exit", "java.lang.Runtime.exit", "java.lang.Runtime.halt")))
            .as("no class ends the process");

    @ArchTest
    static final ArchRule nothingReadsTheClock =
            noClasses().should(callOneOf(CLOCKS)).as("no class reads the wall clock: same input, same bytes");

    @ArchTest
    static final ArchRule chanceIsSeeded =
            noClasses().should(callOneOf(CHANCE)).as("no class draws unseeded random numbers");

    @ArchTest
    static final ArchRule generatorsAreSeeded = noClasses()
            .should(accessOneOf(
                    "make a random generator without a seed",
                    target -> target.getName().equals("<init>")
                            && target.getFullName().endsWith("()")
                            && target.getOwner().isAssignableTo(RandomGenerator.class)))
            .as("no class makes a random generator without a seed");

    @ArchTest
    static final ArchRule machineHabitsAreNotUsed = noClasses()
            .should(callOneOf(MACHINE_HABITS))
            .as("no class depends on the machine's locale or character set");

    /** The site's records are left out of the Javadoc lint because the key annotation carries the meaning. */
    @ArchTest
    static void everyKeyOfTheSiteSaysWhatItMeans(JavaClasses classes) {
        List<String> mute = classes.stream()
                .filter(type -> type.getPackageName().equals("earthing.site") && type.isRecord())
                .flatMap(type -> Stream.of(type.reflect().getRecordComponents()))
                .filter(component -> {
                    Key key = component.getAnnotation(Key.class);
                    return key == null || key.doc().isBlank();
                })
                .map(component -> component.getDeclaringRecord().getSimpleName() + "." + component.getName())
                .toList();
        assertThat(mute).as("components of the site without a meaning").isEmpty();
    }

    private static ArchCondition<JavaClass> importOnlyFromLowerFloors() {
        return new ArchCondition<>("import only from lower floors") {
            @Override
            public void check(JavaClass from, ConditionEvents events) {
                Optional<String> room = roomOf(from);
                if (room.isEmpty() || !FLOOR_OF_ROOM.containsKey(room.get())) {
                    events.add(SimpleConditionEvent.violated(from, from.getName() + " is in no room of the table"));
                    return;
                }
                for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                    Optional<String> other = roomOf(dependency.getTargetClass());
                    if (other.isEmpty() || other.equals(room)) {
                        continue;
                    }
                    Integer floor = FLOOR_OF_ROOM.get(other.get());
                    if (floor == null || floor >= FLOOR_OF_ROOM.get(room.get())) {
                        events.add(SimpleConditionEvent.violated(
                                from,
                                room.get() + " must not see " + other.get() + ": " + dependency.getDescription()));
                    }
                }
            }
        };
    }

    private static Optional<String> roomOf(JavaClass type) {
        String prefix = "earthing.";
        String pack = type.getBaseComponentType().getPackageName();
        if (!pack.startsWith(prefix)) {
            return Optional.empty();
        }
        String rest = pack.substring(prefix.length());
        int dot = rest.indexOf('.');
        return Optional.of(dot < 0 ? rest : rest.substring(0, dot));
    }

    private static ArchCondition<JavaClass> resideInPackageMatching(Pattern pattern) {
        return new ArchCondition<>("reside in a package matching " + pattern) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                boolean found = pattern.matcher(type.getPackageName()).matches();
                events.add(new SimpleConditionEvent(type, found, type.getName() + " in " + type.getPackageName()));
            }
        };
    }

    /** Names are {@code owner.method} for every overload, or {@code owner.method(types)} for one. */
    private static ArchCondition<JavaClass> callOneOf(Set<String> names) {
        return accessOneOf("call one of " + names, target -> {
            String full = target.getFullName();
            return names.contains(full) || names.contains(full.substring(0, full.indexOf('(')));
        });
    }

    /** Calls and method references alike. */
    private static ArchCondition<JavaClass> accessOneOf(String description, Predicate<CodeUnitAccessTarget> forbidden) {
        return new ArchCondition<>(description) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                for (JavaAccess<?> access : type.getAccessesFromSelf()) {
                    if (access.getTarget() instanceof CodeUnitAccessTarget target && forbidden.test(target)) {
                        events.add(SimpleConditionEvent.satisfied(type, access.getDescription()));
                    }
                }
            }
        };
    }
}
