"""Every sentence that the phone's page and its answers may say."""

from __future__ import annotations

from inspector.texts import Say, say

# Those of the page itself, by the name under which the page asks for them.
PAGE: dict[str, Say] = {
    "title": say("Phone of the inspection"),
    "you": say("This is phone {number}."),
    "plain": say("The local network is not encrypted."),
    "shoot": say("take a photograph"),
    "choose": say("choose several"),
    "what": say("To photograph here"),
    "mark": say("Mark it"),
    "pass": say("pass"),
    "doubt": say("doubt"),
    "fail": say("fail"),
    "back": say("back"),
    "next": say("next"),
    "sent": say("Sent from this phone"),
    "count": say("{kept} of {all} kept"),
    "waiting": say("waits"),
    "sending": say("{percent} % sent"),
    "looking": say("sent; the computer looks at it"),
    "kept": say("kept"),
    "there": say("already there"),
    "refused": say("refused"),
    "unsent": say("not sent"),
    "again": say("send again"),
    "for": say("for {item}"),
    "connecting": say("Asking the computer what is open …"),
    "lost": say("The computer does not answer. Nothing is sent until it does; check that both are on one network."),
    "ended": say("The computer has closed this page. Nothing more is taken from this phone."),
    "cut": say("This phone was cut off at the computer. Nothing more is taken from it."),
    "moved": say("The computer has gone on to {item}. What you chose before is for {before}."),
    "large": say("{name} is larger than {most} MB. Send a smaller copy of it."),
    "none": say("{name} is empty. Choose it again."),
    "gone": say("{name} could not be sent: the connection broke off. Look whether it is there, or send it again."),
}

WRONG_CODE = say("This address does not hold. Look at the computer, and scan or type the address that it shows now.")
OLD_CODE = say("This code has run out. Press “new code” at the computer, and scan it again.")
FULL = say("{most} phones have joined, and no more may. Cut one off at the computer first.")
STRANGER = say("This phone has not joined. Scan the code that the computer shows now.")
WRONG_HOST = say("This page answers only at the address that the computer shows.")
WRONG_ORIGIN = say("This was not asked by the page of the inspection, and was not done.")
TOO_OFTEN = say("That was too often in a short time. Wait a moment, then try again.")
NOTHING_THERE = say("There is nothing at this address.")
NOT_UNDERSTOOD = say("This was not understood, and nothing was done.")
BUSY = say("The computer is busy with other photographs. Wait a moment, then send it again.")
TOO_LARGE = say("The file is larger than {most} MB. Send a smaller copy of it.")
EMPTY = say("The file is empty. Choose it again.")
PACKED = say("The file came packed. Send it as it is.")
BROKE_OFF = say("The file did not come in whole. Send it again.")
TOO_MANY = say("So much has been sent that no more is taken. Close the page at the computer and open it again.")
ELSEWHERE = say("The computer has gone on to another item. Look at it, and press again.")
OTHER_MACHINE = say("Another machine is open at the computer now. Load this page again.")
FAULT = say("The computer could not do this. Look at it.")
CLOSED = say("The computer closed the page just then. Look there whether it was done.")
NO_ANSWER = say("The computer has not told what became of it. Look there whether it was done.")

ALONE = say("The page for the phone was closed: no phone had joined for half an hour.")
SLEPT = say("The page for the phone was closed, because this computer slept.")
BROKEN = say("The page for the phone was closed: {what}.")
NO_ADDRESS = say("{address} is not an address of a local network. Choose one of this computer's.")
NOT_OPENED = say(
    "The page for the phone could not be opened on {address} ({reason}). Check the network, then try again."
)
