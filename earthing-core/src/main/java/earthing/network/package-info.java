/**
 * Electrical circuits of lumped branches: named nodes, coupled resistances and inductances, capacitances, sources and
 * nonlinear resistances, solved for one frequency or step by step in time, with a re-check of Kirchhoff's laws by code
 * that shares nothing with the solver. Finite ladders of spans have their own two-term recursion.
 */
@NullMarked
package earthing.network;

import org.jspecify.annotations.NullMarked;
