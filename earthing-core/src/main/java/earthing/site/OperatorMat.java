package earthing.site;

/** A metal mat under the operator, bonded to the cubicle's earth. */
public record OperatorMat(
        @Key(required = true, doc = "Place of its middle.") Position at,

        @Key(required = true, doc = "Its shape; sides lie along x and y.")
        MatShape shape) {}
