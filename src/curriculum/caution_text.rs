//! The shipped wording of the caution classes. A school may reword any part; none can be emptied.
//!
//! The wording is common practice in strength coaching; the eye-pressure figures behind "inverted" are Baskaran et al. 2006,
//! Ophthalmology 113(8):1327-1332, and Jasien et al. 2015, PLoS One 10(12):e0144505.

use super::caution::{Class, Signal};

type Row = (&'static str, &'static str, Signal, [&'static str; 5]);

/// The classes in the order of the cautions page.
pub fn shipped() -> Vec<Class> {
    let class = |(id, name, signal, [happens, ask_first, set_up, bail_out, stop]): &Row| Class {
        id: (*id).into(),
        name: (*name).into(),
        signal: *signal,
        happens: (*happens).into(),
        ask_first: (*ask_first).into(),
        set_up: (*set_up).into(),
        bail_out: (*bail_out).into(),
        stop: (*stop).into(),
    };
    ROWS.iter().map(class).collect()
}

const ROWS: &[Row] = &[
    (
        "inverted",
        "Upside down",
        Signal::Warning,
        [
            "You can fall on your head, neck, back or wrists. Pressure in the eyes about doubles within seconds, and blood pressure in the head rises.",
            "Anyone with glaucoma or another eye disease, recent eye surgery, high blood pressure, heart disease, a past stroke, a neck or spine injury, reflux, dizziness, or who is pregnant.",
            "Learn it under a qualified coach. Clear two metres around you, a firm flat floor or a mat that does not slide, nobody walking past.",
            "Know one way out before you go up, and practise it first: step down, turn a quarter and step out, or lower the feet the way they came.",
            "Stop at pressure behind the eyes, seeing spots, a headache, numbness, dizziness, or when the arms begin to shake.",
        ],
    ),
    (
        "part-inverted",
        "Head below the hips",
        Signal::Caution,
        [
            "Blood rushes to the head, pressure in the eyes rises, and a slip puts weight on the face or neck.",
            "Anyone with an eye disease, high blood pressure, a neck injury, dizziness, or who is pregnant.",
            "Hands or feet on something that cannot slide; the way down is clear.",
            "Bend the knees and put them on the floor, or step the feet down one at a time.",
            "Stop at a headache, spots before the eyes or dizziness, and come up slowly.",
        ],
    ),
    (
        "loaded",
        "Added weight",
        Signal::Warning,
        [
            "A weight that swings, drops or pulls you off balance can crush, tear or throw you; joints and tendons carry more than your body alone.",
            "Anyone with a heart condition, high blood pressure, a hernia, a recent injury or operation, or who is pregnant.",
            "Learn it under a qualified coach. Check the anchor, the belt and the collars for the whole load; warm up through lighter sets; let nobody stand under or near it.",
            "Know how to set the weight down before you lift it: a box under the feet, or lower to the start and step away.",
            "Stop when the speed drops sharply, the path changes, or anything pinches, and put the weight down.",
        ],
    ),
    (
        "straight-arm",
        "Straight arms under load",
        Signal::Caution,
        [
            "The elbow tendons and the front of the shoulder carry the load without help from bent-arm strength; they adapt more slowly than muscle.",
            "Anyone with elbow or biceps tendon pain, very mobile joints, or a past dislocation of the shoulder.",
            "Lock the elbows gently, turn the shoulders to where you were taught, and build the time up over weeks.",
            "Bend the elbows or let the feet take weight.",
            "Stop at a sharp or hot feeling inside the elbow or at the front of the shoulder.",
        ],
    ),
    (
        "lowering",
        "Lowering only",
        Signal::Caution,
        [
            "Lowering is harder on muscle than lifting: it leaves you sore for days, and too much can damage muscle badly.",
            "Anyone who has had dark urine after training, a muscle tear, or is new to strength training.",
            "Start with few reps, a way to step up to the top, and two days of rest behind it.",
            "Put the feet down at any point of the way.",
            "Stop when you can no longer choose the speed.",
        ],
    ),
    (
        "overhead",
        "Arms overhead",
        Signal::Caution,
        [
            "A shoulder that cannot reach overhead pinches, or the lower back bends to make up for it.",
            "Anyone with a shoulder injury, an unstable shoulder, or pain when reaching up.",
            "Check the overhead reach first and warm it up; ribs down, shoulders up beside the ears.",
            "Come down the way you went up; let go only when the feet can land.",
            "Stop at a pinch on top of the shoulder, or tingling in the arm.",
        ],
    ),
    (
        "wrist-extension",
        "Wrists bent back under load",
        Signal::Caution,
        [
            "The back of the wrist is squeezed and its ligaments are stretched; both are slow to calm down.",
            "Anyone with a wrist fracture, a ganglion, carpal tunnel trouble, or wrist pain in daily life.",
            "Warm the wrists up, spread the fingers, and press through the fingertips and the heel of the hand.",
            "Lift the hands, or change to fists or handles.",
            "Stop at a sharp pain at the back of the wrist or tingling in the fingers.",
        ],
    ),
    (
        "shoulder-extension",
        "Arms behind the body under load",
        Signal::Caution,
        [
            "The front of the shoulder and the biceps tendon are stretched while they carry weight.",
            "Anyone with a past dislocation, pain at the front of the shoulder, or very mobile shoulders.",
            "Go no deeper than the reach you have shown without load; chest open, shoulders down.",
            "Let the feet take weight before you come out.",
            "Stop at a stretch that turns sharp at the front of the shoulder.",
        ],
    ),
    (
        "spine-extension",
        "Back bent backwards",
        Signal::Caution,
        [
            "The joints at the back of the lower spine are pressed together.",
            "Anyone with a slipped vertebra, a stress fracture of the spine, or back pain that bending backwards makes worse.",
            "Squeeze the buttocks and spread the bend over the whole back.",
            "Lower the hips or the chest to the floor.",
            "Stop at a pinch in the lower back or pain into a leg.",
        ],
    ),
    (
        "deep-knee-flexion",
        "Knees bent deeply under load",
        Signal::Caution,
        [
            "The kneecap is pressed hard against the thigh bone, and the cartilage at the back of the knee is squeezed.",
            "Anyone with a knee operation, a torn meniscus or ligament, or knee pain on stairs.",
            "Heel down, knee in line with the toes, and only as deep as the ankle allows.",
            "Sit back to the floor or to a box, or hold on with a hand.",
            "Stop at a catch, a lock, or a sharp pain in the knee.",
        ],
    ),
    (
        "neck-load",
        "Weight on the head or neck",
        Signal::Warning,
        [
            "The neck can be crushed or twisted; a bad fall here may be for life.",
            "Anyone with any neck injury, arthritis of the neck, osteoporosis, or numbness in the arms.",
            "Learn it under a qualified coach. A soft mat, chin tucked, the hands carrying the weight.",
            "Tuck the chin and roll onto the upper back, or step down.",
            "Stop at any neck pain, tingling or weakness, and see a clinician.",
        ],
    ),
    (
        "breath-holding",
        "Holding the breath",
        Signal::Caution,
        [
            "Holding the breath against effort raises blood pressure steeply and can make you faint.",
            "Anyone with high blood pressure, heart disease, an aneurysm, a hernia, an eye disease, or who is pregnant.",
            "Breathe out through the hard part; count aloud if you forget.",
            "Let go of the effort and breathe.",
            "Stop at dizziness, spots before the eyes, or pounding in the head.",
        ],
    ),
    (
        "fall-height",
        "A fall from height",
        Signal::Warning,
        [
            "Hands can slip and the body drops; ankles, back, head and elbows take the fall.",
            "Anyone with brittle bones, a balance disorder, or who is pregnant.",
            "Feet no higher above the floor than you can step down; a mat below; dry hands; nothing hard within reach of a fall.",
            "Put the feet down before the hands let go; never jump off tired.",
            "Stop when the grip slips or the return to the top is in doubt.",
        ],
    ),
    (
        "momentum",
        "Swing and speed",
        Signal::Caution,
        [
            "A body that moves fast is hard to stop, and arrives with more force than it started with.",
            "Anyone with a recent joint injury or an unstable shoulder.",
            "Start small; space on every side; someone beside you the first times.",
            "Let the swing die out before you let go or step down.",
            "Stop when you cannot say where the feet will land.",
        ],
    ),
    (
        "equipment",
        "Equipment that can fail",
        Signal::Caution,
        [
            "An anchor, strap, band, door frame or box that gives way drops you without notice.",
            "Anyone for whom a short fall would be serious.",
            "Hang or lean on it with more than your weight before each session; read its rated load; look for wear.",
            "Keep the feet close to the floor.",
            "Stop when anything moves, creaks or frays.",
        ],
    ),
    (
        "alone",
        "Training alone",
        Signal::Notice,
        [
            "Nobody sees a fault, and nobody helps after a fall.",
            "Anyone with a condition that can make them faint.",
            "Tell somebody where you are; keep a phone within reach of the floor.",
            "Choose the variation that you can leave by yourself.",
            "Stop one rep earlier than you would in company.",
        ],
    ),
];
