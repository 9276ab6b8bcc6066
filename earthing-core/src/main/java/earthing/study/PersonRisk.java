package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.safety.BodyCurve;
import earthing.safety.BodyImpedance;
import earthing.safety.BodyPath;
import earthing.safety.Coincidence;
import earthing.safety.Contact;
import earthing.safety.Exposure;
import earthing.safety.FibrillationChance;
import earthing.safety.Standing;
import earthing.site.BodyModel;
import earthing.site.ContactExposure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Individual risk a year of a person who touches the site now and then; information beside the permissible voltages. */
final class PersonRisk {

    private static final String KEY = "criteria.exposure";
    private static final Source SKIN =
            Source.tool("water-wet skin at large areas of contact: a pole site is touched in rain");
    private static final Source SUM =
            Source.tool("sum over the exposures of coincidence times chance of fibrillation, docs/theory/safety.md");

    private final double faults;
    private final double contacts;
    private final double contactDuration;
    private final double target;
    private final Source targetSource;
    private final BodyImpedance impedance;

    private PersonRisk(ContactExposure exposure, @Nullable BodyModel body, Inputs in) throws MissingInput {
        faults = in.need(exposure.faultRate(), KEY + ".fault-rate", Bound.HIGH);
        contacts = in.need(exposure.contactRate(), KEY + ".contact-rate", Bound.HIGH);
        contactDuration = in.need(exposure.contactDuration(), KEY + ".contact-duration", Bound.HIGH);
        if (exposure.target() == null) {
            target = Coincidence.TARGET.value();
            targetSource = Coincidence.TARGET.source();
            in.choice(KEY + ".target", "1e-6 /a", targetSource);
        } else {
            target = in.need(exposure.target(), KEY + ".target", Bound.LOW);
            targetSource = Source.owner(KEY + ".target");
        }
        if (body == null) {
            in.choice("criteria.body.skin", "water-wet, for the individual risk", SKIN);
        }
        impedance = body == null ? BodyImpedance.WATER_WET_2005 : CriteriaSet.impedance(body);
    }

    static PersonRisk of(ContactExposure exposure, @Nullable BodyModel body, Inputs in) throws MissingInput {
        return new PersonRisk(exposure, body, in);
    }

    /**
     * The risk at one part in one fault case.
     *
     * @throws MissingInput if a fault is never cleared or the contacts fill the year
     */
    List<Result> at(
            String part, PowerCase fault, double voltage, Contact contact, Standing standing, List<Exposure> exposures)
            throws MissingInput {
        FibrillationChance chance = new FibrillationChance(
                impedance,
                contact == Contact.HAND_TO_HAND ? BodyPath.HAND_TO_HAND : BodyPath.LEFT_HAND_TO_FEET,
                BodyCurve.creditedResistance(contact, standing));
        double coincidences = 0;
        double risk = 0;
        for (Exposure exposure : exposures) {
            if (exposure.isSustained()) {
                throw new MissingInput(
                        "the fault is never cleared: whoever touches meets it, and no rate of coincidence exists",
                        "protection.relay.pickup");
            }
            double times;
            try {
                times = Coincidence.perYear(faults, contacts, exposure.duration(), contactDuration);
            } catch (IllegalArgumentException full) {
                throw new MissingInput(
                        "the contacts fill more than the year", KEY + ".contact-rate", KEY + ".contact-duration");
            }
            coincidences += times;
            risk += times * chance.of(voltage, exposure.duration());
        }
        String id = "exposure." + part + ".";
        double mean = coincidences > 0 ? risk / coincidences : 0;
        return List.of(
                result(
                        id + "coincidences",
                        fault,
                        coincidences,
                        "/a",
                        "contact while the voltage stands",
                        Coincidence.SOURCE),
                result(
                        id + "fibrillation-chance",
                        fault,
                        mean,
                        "",
                        "upper bound by steps at curves c1 and c2, " + impedance.label() + " skin",
                        FibrillationChance.SOURCE),
                result(id + "individual-risk", fault, risk, "/a", "coincidences times chance, upper bound", SUM)
                        .withWorked(Worked.of("P", "n_c * p_f")
                                .with("n_c", coincidences, "/a")
                                .with("p_f", mean, "")
                                .gives(risk, "/a")),
                result(id + "target", fault, target, "/a", "highest individual risk", targetSource));
    }

    private static Result result(String id, PowerCase fault, double value, String unit, String model, Source source) {
        return Result.of(id, fault.circumstances(), fault.at(), value, unit, model, source);
    }
}
